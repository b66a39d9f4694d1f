// The engine in a thread of its own. Takes the packed module once, then questions; answers each under its number.
import Engine from "engine";
import { unpacked } from "./packed";
import { loosely } from "../utf8";
import type { Answer, Question } from "./question";

interface Start { module: string }
interface Asked { number: number; question: Question }

const send = (message: unknown) => (self as unknown as { postMessage(message: unknown): void }).postMessage(message);

const failed = (fault: unknown): Answer => ({
  exit: 4, text: "", notes: String(fault), faults: [], files: {},
});

const foldersOf = (name: string): string[] => name.split("/").slice(0, -1).map((_, i, parts) => parts.slice(0, i + 1).join("/"));

function answerOf(module: EngineModule, { number, question }: Asked): Answer {
  const files = Object.entries(question.files ?? {});
  const folders = [...new Set(files.flatMap(([name]) => foldersOf(name)))];
  try {
    for (const folder of folders) module.FS.mkdirTree(folder);
    for (const [name, content] of files) module.FS.writeFile(name, content);
    const { files: _, ...asked } = question;
    const answer = JSON.parse(module.ask(JSON.stringify(asked), (done, total) => send({ number, progress: { done, total } })));
    answer.files = {};
    for (const [name, content] of files) {
      if (typeof content !== "string") continue;
      const now = loosely(module.FS.readFile(name) as Uint8Array);
      if (now !== content) answer.files[name] = now;
    }
    return answer as Answer;
  } catch (fault) {
    // The module may be in pieces: the page starts a new one.
    send({ failed: String(fault) });
    return failed(fault);
  } finally {
    for (const [name] of files) try { module.FS.unlink(name); } catch { /* never written */ }
    for (const folder of folders.reverse()) try { module.FS.rmdir(folder); } catch { /* never made, or one within is left */ }
  }
}

let ready: Promise<EngineModule> | undefined;

self.onmessage = async (event: MessageEvent<Start | Asked>) => {
  const message = event.data;
  if ("module" in message) {
    ready = unpacked(message.module).then((wasmBinary) => Engine({ wasmBinary }));
    ready.then(() => send({ ready: true }), (fault) => send({ failed: String(fault) }));
    return;
  }
  try {
    const module = await ready;
    send({ number: message.number, answer: module ? answerOf(module, message) : failed("the engine was not started") });
  } catch (fault) {
    send({ number: message.number, answer: failed(fault) });
  }
};
