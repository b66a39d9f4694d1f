// The page as a whole: the steps of the work, in their order, under a head that says where the files and the engine stand.
import "./page.css";
import { render } from "preact";
import { useEffect, useState } from "preact/hooks";
import { followDrafts } from "./drafts";
import { ask, completeQuestions, engineProgress, engineState, startEngine, stopWork } from "./engine/engine";
import { open, prepareBeginnings, told } from "./files";
import { job, said } from "./job/edit";
import { loadNames, names } from "./names";
import { loadQuestions } from "./parts/examination";
import { AfterwardsPart } from "./parts/afterwards";
import { EaselPart } from "./parts/easel";
import { BeginPart, FaultList, FilesPart, PutBack, UnsavedBar } from "./parts/files";
import { LadderPart } from "./parts/ladder";
import { PaintingPart } from "./parts/painting";
import { PapersPart } from "./parts/papers";
import { ShelfPart } from "./parts/shelf";
import { loadSolvents, solvents } from "./parts/solvents";
import { askAll, followFiles, isStopped, jobText } from "./state";
import { step, steps, type Step } from "./steps";
import { withStudio } from "./studio";
import { language, languages, words } from "./words/words";

const parts: Record<Step, () => preact.JSX.Element | null> = {
  painting: PaintingPart, shelf: ShelfPart, ladder: LadderPart, easel: EaselPart, afterwards: AfterwardsPart, papers: PapersPart,
};

function again(): void {
  if (typeof engineState.value === "object") startEngine();
  loadLists();
  if (jobText.value !== "") void askAll();
}

// Once each; where they were lost with the engine, once more.
function loadLists(): void {
  if (names.value.length === 0) void loadNames();
  if (solvents.value.length === 0) void loadSolvents();
  void loadQuestions();
}

function Working() {
  const { files } = words.value;
  const progress = engineProgress.value;
  const percent = progress && progress.total > 0 ? Math.round((100 * progress.done) / progress.total) : null;
  return (
    <>
      <span class="soft" role="status">{percent === null ? files.engine_working : files.engine_progress(percent)}</span>
      {percent !== null && <progress aria-label={files.engine_working} max={100} value={percent} />}
      <button type="button" class="stop" onClick={stopWork}>{files.engine_stop}</button>
    </>
  );
}

function EngineState() {
  const { files } = words.value;
  const state = engineState.value;
  if (typeof state === "object") {
    return <div class="faults" role="alert"><p>{files.engine_failed(state.failed)}</p><button type="button" onClick={again}>{files.engine_again}</button></div>;
  }
  if (state === "working") return <div class="state"><Working /></div>;
  if (isStopped.value) {
    return <div class="state"><span role="status" class="warn">{files.engine_given_up}</span><button type="button" onClick={again}>{files.engine_work_again}</button></div>;
  }
  return <div class="state"><span class="soft" role="status">{state === "starting" ? files.engine_starting : files.engine_ready}</span></div>;
}

function Language() {
  return (
    <label class="tick">{words.value.files.language}
      <select value={language.value} onChange={(event) => (language.value = event.currentTarget.value)}>
        {Object.entries(languages).map(([key, { name }]) => <option key={key} value={key} lang={key}>{name}</option>)}
      </select>
    </label>
  );
}

// What went well was read by now; what went wrong stays.
function go(to: Step): void {
  step.value = to;
  told.value = told.value.filter((one) => one.isBad);
}

function Steps() {
  const { page, files } = words.value;
  return (
    <nav aria-label={files.steps}>
      <ol class="steps">
        {steps.map((one) => (
          <li key={one}><button type="button" aria-current={step.value === one ? "step" : undefined} onClick={() => go(one)}>{page.steps[one]}</button></li>
        ))}
      </ol>
    </nav>
  );
}

/** At the end of a step the next one, for whoever does not look up at the head. */
function GoOn() {
  const following = steps[steps.indexOf(step.value) + 1];
  if (!following) return null;
  const onClick = () => {
    go(following);
    window.scrollTo(0, 0);
    document.querySelector<HTMLElement>(`.steps li:nth-child(${steps.indexOf(following) + 1}) button`)?.focus();
  };
  return <p><button type="button" onClick={onClick}>{words.value.files.go_on(words.value.page.steps[following])}</button></p>;
}

/** Files that are dropped anywhere are opened; whatever else is dragged is left to the browser. */
function useDrop(): boolean {
  const [isOver, setOver] = useState(false);
  useEffect(() => {
    // A field for files takes its own: a swab's photograph is no painting to open.
    const hasFiles = (event: DragEvent) => Array.from(event.dataTransfer?.types ?? []).includes("Files")
      && !(event.target instanceof Element && event.target.closest("input[type=file], label"));
    const over = (event: DragEvent) => { if (hasFiles(event)) { event.preventDefault(); setOver(true); } };
    const leave = (event: DragEvent) => { if (!event.relatedTarget) setOver(false); };
    const drop = (event: DragEvent) => {
      setOver(false);
      if (!hasFiles(event) || event.defaultPrevented) return;
      event.preventDefault();
      void open(Array.from(event.dataTransfer?.files ?? []));
    };
    window.addEventListener("dragover", over);
    window.addEventListener("dragleave", leave);
    window.addEventListener("drop", drop);
    return () => { window.removeEventListener("dragover", over); window.removeEventListener("dragleave", leave); window.removeEventListener("drop", drop); };
  }, []);
  return isOver;
}

function Page() {
  const isOver = useDrop();
  const isOpen = jobText.value !== "";
  const title = job.value.object.title || words.value.files.untitled;
  useEffect(() => {
    document.documentElement.lang = language.value;
    document.title = isOpen ? title : words.value.page.title;
  });
  const Part = parts[step.value];
  return (
    <div class={isOver ? "dropping" : ""}>
      <header class="head">
        <h1>{isOpen ? title : words.value.page.title}</h1>
        <div class="actions"><EngineState /><Language /></div>
      </header>
      {isOpen && <Steps />}
      <UnsavedBar />
      <main>
        {isOpen && <FilesPart />}
        {isOpen && <FaultList />}
        {isOpen ? <Part /> : <BeginPart />}
        {isOpen && <GoOn />}
      </main>
      <PutBack />
      <p class="hidden-text" aria-live="polite">{said.value}</p>
    </div>
  );
}

completeQuestions(withStudio);
startEngine();
prepareBeginnings();
loadLists();
followFiles();
followDrafts();
// The one way in for the tests in real browsers.
Object.assign(window, { gentlest: { ask } });
const place = document.getElementById("page");
if (place) {
  place.textContent = "";
  render(<Page />, place);
}
