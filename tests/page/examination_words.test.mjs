// The examination in another language: every question and every answer of the catalogue has its words there, and no word
// stands for a question or an answer that is gone.
//   node --test tests/page/examination_words.test.mjs
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { test } from "node:test";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "../..");
const need = createRequire(join(root, "src/page/package.json"));
const { buildSync } = need("esbuild");
const YAML = need("yaml");

const { outputFiles: [words] } = buildSync({ entryPoints: [join(root, "src/page/words/examination.de.ts")], bundle: true, write: false, format: "esm" });
const { questionsDe, answersDe } = await import(`data:text/javascript;base64,${Buffer.from(words.text).toString("base64")}`);
const asked = YAML.parse(readFileSync(join(root, "solvents/examination.yaml"), "utf8")).examination;
// "not known" is asked of every question and stands with the page's own words.
const answers = new Set(asked.flatMap((question) => question.answers.map(({ answer }) => answer)));

test("every question has its German words, and none is left over", () => {
  assert.deepEqual(Object.keys(questionsDe).sort(), asked.map(({ id }) => id).sort());
});

test("every answer has its German words, and none is left over", () => {
  assert.deepEqual([...answers].filter((answer) => !(answer in answersDe)), []);
  assert.deepEqual(Object.keys(answersDe).filter((answer) => !answers.has(answer) && answer !== "not known"), []);
});
