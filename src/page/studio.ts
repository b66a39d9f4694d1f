// Finished paintings of the studio, as the folder of --studio: a plan begins where they leave off. They are read by the
// engine alone; the page shows none of what stands in them.
import { computed, signal } from "@preact/signals";
import { ask, type Fault, type Question } from "./engine/engine";
import { readJob } from "./job/document";
import { jobFile, jobName, jobText, studioFiles, type StudioFile } from "./state";
import { decoded } from "./utf8";

const folder = "studio";
const most_bytes = 16e6;

/** The commands that plan: a rung is a rung of one plan, so each of them is asked with the same paintings. */
const planning: readonly string[] = ["ladder", "mixture", "vial", "sheet", "labels", "chart", "record", "import", "next", "report", "explain", "ways"];

const stem = (name: string) => name.replace(/\.[^.]*$/, "");

/** The painting that is planned teaches by its own log; in the page its file has another name than in the folder. */
function isOpenPainting({ name, text }: StudioFile): boolean {
  if (!/\.ya?ml$/i.test(name)) return false;
  return text === jobText.value || (name === jobName.value && readJob(text).object.title === readJob(jobText.value).object.title);
}

export const leftOutAsOpen = computed(() => studioFiles.value.filter(isOpenPainting));

/** Those that count: without the open painting and its log. */
const counting = computed(() => {
  const open = leftOutAsOpen.value;
  const left = studioFiles.value.filter((one) => !open.some((other) => other.pick === one.pick && stem(other.name) === stem(one.name)));
  return left.some(({ name }) => /\.(ya?ml|csv)$/i.test(name)) ? left : [];
});

const asFiles = (some: readonly StudioFile[]) => Object.fromEntries(some.map(({ pick, name, text }) => [`${folder}/${pick}/${name}`, text]));

/** Gives the finished paintings along with a question of the plan, and with that of what they taught. */
export function withStudio(question: Question): Question {
  const given = counting.peek();
  const hasItsOwn = Object.keys(question.files ?? {}).some((name) => name.startsWith(`${folder}/`));
  if (given.length === 0 || hasItsOwn) return question;
  const isOfPlan = planning.includes(question.command) && question.words[0] === jobFile;
  if (!isOfPlan && question.command !== "studio") return question;
  const options = isOfPlan ? { ...question.options, studio: folder } : question.options ?? {};
  return { ...question, options, files: { ...question.files, ...asFiles(given) } };
}

export const studioQuestion: Question = { command: "studio", words: [folder] };

/** What of the last files that were chosen is not used, in the engine's words or by name. */
export const studioNotes = signal<{ unread: readonly string[]; faults: readonly Fault[]; notes: string }>({ unread: [], faults: [], notes: "" });

let picks = 0;

async function textOf(file: File): Promise<string | undefined> {
  if (file.size > most_bytes) return undefined;
  const bytes = new Uint8Array(await file.arrayBuffer());
  return bytes.includes(0) ? undefined : decoded(bytes);
}

/** Files chosen together lie in one folder; what the engine cannot use at all is not taken. True when they are in use. */
export async function takeStudioFiles(list: readonly File[]): Promise<boolean> {
  const pick = ++picks;
  const read = await Promise.all(list.map(async (file) => ({ name: file.name, text: await textOf(file).catch(() => undefined) })));
  const given = read.flatMap(({ name, text }) => (text === undefined ? [] : [{ pick, name, text }]));
  const unread = read.filter((one) => one.text === undefined).map((one) => one.name);
  const answer = await ask(`studio:${pick}`, { ...studioQuestion, files: asFiles(given) });
  studioNotes.value = { unread, faults: answer.faults, notes: answer.exit > 1 && answer.faults.length > 0 ? "" : answer.notes };
  if (answer.exit > 1) return false;
  studioFiles.value = [...studioFiles.value, ...given];
  return true;
}

export function leaveStudioOut(): void {
  studioFiles.value = [];
  studioNotes.value = { unread: [], faults: [], notes: "" };
}
