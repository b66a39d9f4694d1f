// What the examination showed: the engine's questions, each with its answers and what an answer does.
import { signal } from "@preact/signals";
import type { ExaminationAnswer } from "../answers";
import { ask } from "../engine/engine";
import { setFinding, type FindingView, type Path } from "../job/document";
import { edit, piece } from "../job/edit";
import { words } from "../words/words";
import { FaultsAt } from "./fields";
import { Fold } from "./fold";
import { useId } from "preact/hooks";

type Question = ExaminationAnswer["questions"][number];

const questions = signal<readonly Question[]>([]);
const open: FindingView = { answer: "", where: [], note: "" };
const notKnown = "not known";
const findings = piece((job) => job.examination);
const passageNames = piece((job) => job.passages.map((one) => one.name).filter((name) => name !== ""));

/** Asked once; where it was lost with the engine, once more. */
export async function loadQuestions(): Promise<void> {
  if (questions.value.length > 0) return;
  const answer = await ask("questions", { command: "examine", words: [], options: { format: "json" } });
  if (answer.exit === 0) questions.value = (JSON.parse(answer.text) as ExaminationAnswer).questions;
}

function Where({ question, finding }: { question: Question; finding: FindingView }) {
  const text = words.value.painting;
  const id = useId();
  const put = (where: string[]) => edit((now) => setFinding(now, question.id, { ...finding, where }));
  const named = passageNames.value;
  const others = finding.where.filter((one) => !named.includes(one));
  const toggle = (name: string) => put(finding.where.includes(name) ? finding.where.filter((one) => one !== name) : [...finding.where, name]);
  return (
    <fieldset class="plain">
      <legend>{text.where}</legend>
      {named.map((name) => (
        <label key={name} class="tick"><input type="checkbox" checked={finding.where.includes(name)} onChange={() => toggle(name)} /> {name}</label>
      ))}
      <div class="field">
        <label for={id}>{text.where_else}</label>
        <input id={id} type="text" autocomplete="off" value={others.join(", ")}
          onChange={(event) => put([...finding.where.filter((one) => named.includes(one)), ...event.currentTarget.value.split(",").map((one) => one.trim()).filter((one) => one !== "")])} />
      </div>
    </fieldset>
  );
}

function Asked({ question }: { question: Question }) {
  const text = words.value.painting;
  const finding = findings.value[question.id] ?? open;
  const path: Path = ["examination", question.id];
  const id = useId();
  // A note is never lost; a place goes with the answer that asks for one.
  const changed = (word: string): FindingView => {
    const where = question.answers.find((one) => one.answer === word)?.asks_where ? finding.where : [];
    return { ...finding, answer: word === notKnown && finding.note === "" ? "" : word, where };
  };
  const chosen = question.answers.find((one) => one.answer === (finding.answer || notKnown));
  return (
    <div class="field">
      <label for={id}>{text.questions[question.id] ?? question.question}</label>
      <select id={id} value={finding.answer || notKnown} aria-describedby={`${id}-does`}
        onChange={(event) => { const word = event.currentTarget.value; edit((now) => setFinding(now, question.id, changed(word))); }}>
        {question.answers.map(({ answer }) => <option key={answer} value={answer}>{answer === notKnown ? text.not_known : text.answers[answer] ?? answer}</option>)}
        {!chosen && <option value={finding.answer}>{finding.answer}</option>}
      </select>
      <FaultsAt path={path} />
      <div id={`${id}-does`}>
        {chosen?.says && <p>{chosen.says}</p>}
        {chosen?.effects && <p class="warn">{text.it_does(chosen.effects)}</p>}
      </div>
      {chosen?.asks_where && <Where question={question} finding={finding} />}
      <details><summary>{text.why_asked}</summary><p class="soft">{question.why} ({question.source})</p></details>
    </div>
  );
}

export function ExaminationFields() {
  const text = words.value.painting;
  const topics = [...new Set(questions.value.map((one) => one.topic))];
  const answered = Object.values(findings.value).filter((one) => one.answer !== notKnown).length;
  return (
    <section aria-labelledby="examination-heading">
      <h3 id="examination-heading">{text.examination}</h3>
      <p class="soft">{text.examination_hint}</p>
      <FaultsAt path={["examination"]} />
      {questions.value.length > 0 && <p>{text.answered(answered, questions.value.length)}</p>}
      {topics.map((topic) => (
        <Fold key={topic} of="family" title={text.topics[topic as keyof typeof text.topics] ?? topic}>
          {() => questions.value.filter((one) => one.topic === topic).map((one) => <Asked key={one.id} question={one} />)}
        </Fold>
      ))}
    </section>
  );
}
