// Builds the page: types from the schemas, the bundle, and all of it in one file.
//   node build.mjs ENGINE_FOLDER OUTPUT    (ENGINE_FOLDER holds engine.js and engine.wasm)
import { build } from "esbuild";
import { compile } from "json-schema-to-typescript";
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, "../..");
const [engineFolder = join(root, "build/page"), output = join(root, "build/page/gentlest.html")] = process.argv.slice(2);

async function writeTypes() {
  const folder = join(root, "docs/schema");
  const target = join(root, "build/page/answers");
  mkdirSync(target, { recursive: true });
  for (const name of readdirSync(folder).filter((file) => file.endsWith(".schema.json"))) {
    const { title: _, $id: __, ...schema } = JSON.parse(readFileSync(join(folder, name), "utf8"));
    const kind = name.replace(".schema.json", "");
    const type = kind.charAt(0).toUpperCase() + kind.slice(1) + "Answer";
    const options = { bannerComment: `// Written from docs/schema/${name}.`, format: false, ignoreMinAndMaxItems: true };
    const text = await compile(schema, type, options);
    const rows = kind === "rows" ? await Promise.all(rowSchemas(schema).map((row) => compile(row, row.title, { ...options, bannerComment: "" }))) : [];
    writeFileSync(join(target, name.replace(".schema.json", ".d.ts")), [text, ...rows].join("\n"));
  }
}

// A row of each table by its own columns: as the schema says of them, else as of any cell.
function rowSchemas({ oneOf, additionalProperties: { items: { additionalProperties: cell } } }) {
  return oneOf.map(({ required: [kind], properties }) => {
    const { required, properties: stated = {} } = properties[kind].items;
    const title = `${kind.charAt(0).toUpperCase()}${kind.slice(1)}Row`;
    return { title, type: "object", required, additionalProperties: false, properties: Object.fromEntries(required.map((column) => [column, stated[column] ?? cell])) };
  });
}

const shared = {
  absWorkingDir: here, bundle: true, minify: true, write: false, format: "iife", target: "es2021", charset: "ascii",
  jsx: "automatic", jsxImportSource: "preact", logLevel: "warning", legalComments: "none",
};

async function bundled(entry, extra) {
  const result = await build({ ...shared, entryPoints: [entry], ...extra });
  return result.outputFiles;
}

const workerFile = async () => {
  const [file] = await bundled("engine/worker.ts", {
    alias: { engine: resolve(engineFolder, "engine.js") }, external: ["fs", "path", "crypto", "worker_threads", "perf_hooks"],
  });
  return file.text;
};

const textModule = (name, text) => ({
  name,
  setup(plugin) {
    plugin.onResolve({ filter: new RegExp(`^${name}$`) }, () => ({ path: name, namespace: name }));
    plugin.onLoad({ filter: /.*/, namespace: name }, () => ({ contents: text, loader: "text" }));
  },
});

// A script's text may hold no end of a script.
const asScript = (text) => text.replace(/<\/script/gi, "<\\/script").replace(/<!--/g, "<\\!--");

await writeTypes();
execFileSync(join(here, "node_modules/.bin/tsc"), ["--noEmit", "-p", here], { stdio: "inherit" });
const files = await bundled("page.tsx", { plugins: [textModule("worker-text", await workerFile())], outdir: "out" });
const script = files.find((file) => file.path.endsWith(".js")).text;
const style = files.find((file) => file.path.endsWith(".css"))?.text ?? "";
// The page stands in windows-1252, a byte a letter; engine/packed.ts reads it back.
const moved = new Set([0x00, 0x0d, 0x3c, 0x3d]);
// zopfli finds a twentieth less than gzip, in some seconds; what unpacks it is the same.
function zipped(content) {
  const folder = mkdtempSync(join(tmpdir(), "gentlest_page_"));
  try {
    writeFileSync(join(folder, "part"), content);
    return execFileSync("zopfli", ["--i5", "-c", join(folder, "part")], { maxBuffer: 1e8 });
  } catch (fault) {
    throw new Error(`zopfli packs the page (Debian's package "zopfli"): ${fault.message}`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
const packed = (content) => Buffer.from([...zipped(content)].flatMap((byte) => (moved.has(byte) ? [0x3d, byte + 64] : [byte]))).toString("latin1");
const module = packed(readFileSync(join(engineFolder, "engine.wasm")));
const [start] = await bundled("start.ts");
const put = {
  "STYLE-OF-PAGE": style, "MODULE-OF-ENGINE": module, "PACKED-SCRIPT-OF-PAGE": packed(script), "START-OF-PAGE": asScript(start.text),
};
const page = readFileSync(join(here, "page.html"), "latin1").replace(/\b(STYLE-OF-PAGE|MODULE-OF-ENGINE|PACKED-SCRIPT-OF-PAGE|START-OF-PAGE)\b/g, (word) => put[word]);
mkdirSync(dirname(output), { recursive: true });
writeFileSync(output, page, "latin1");
const most = 1.6e6;
console.log(`${output}: ${(page.length / 1e6).toFixed(2)} MB (engine ${(module.length / 1e6).toFixed(2)}, script ${(put["PACKED-SCRIPT-OF-PAGE"].length / 1e6).toFixed(2)})`);
if (page.length > most) throw new Error(`the page is larger than ${most / 1e6} MB`);
