// What the build puts in: the engine's own glue, the worker as text.
interface EngineModule {
  /** A question (engine/question.ts without its files) and its answer, both as JSON. */
  ask(question: string, progress: (done: number, total: number) => void): string;
  FS: {
    writeFile(name: string, content: string | Uint8Array): void;
    readFile(name: string, options?: { encoding: "utf8" }): string | Uint8Array;
    unlink(name: string): void;
    mkdirTree(name: string): void;
    rmdir(name: string): void;
  };
}

declare module "engine" {
  export default function Engine(options: { wasmBinary: ArrayBuffer }): Promise<EngineModule>;
}

declare module "worker-text" {
  const text: string;
  export default text;
}

declare module "*.css";
