// The ladder: rungs from gentle to strong, why there is none, limits, pictures.
import "./ladder.css";
import type { LadderAnswer } from "../answers";
import { askAll, isStopped, jobFile, jobText, ladder } from "../state";
import { words } from "../words/words";
import { Charts } from "./charts";
import { Faults } from "./faults";
import { figure } from "./figures";
import { Fold } from "./fold";
import { Limits } from "./ladder/limits";
import { RungCard } from "./ladder/rung";
import { InShort, ToldBeside } from "./ladder/told";
import { hasNoBottles, NoBottles } from "./no_bottles";
import { FromStudio } from "./ladder/from_studio";
import { Said } from "./said";
import { PointToWays, Ways } from "./ways";

function NoWindow({ answer }: { answer: LadderAnswer }) {
  const w = words.value.ladder;
  if (answer.outcome === "window" && !answer.no_window) return null;
  return (
    <section class="panel no-window">
      <h3>{answer.outcome === "no ladder" ? w.noLadder : w.noWindow}</h3>
      {answer.no_window?.sentences.map((sentence) => <p key={sentence}>{sentence}</p>)}
      <PointToWays told={words.value.ways.pointed} />
    </section>
  );
}

function Nearest({ answer }: { answer: LadderAnswer }) {
  const w = words.value.ladder;
  const { strongest_within_risk_limit: strongest, least_risk_that_works: least } = answer;
  if (!strongest && !least && answer.to_try.length === 0) return null;
  const shared = { target: answer.target, order: answer.bottles };
  return (
    <section>
      <h3>{answer.to_try.length > 0 ? w.toTry : w.nearest}</h3>
      <ol class="rungs">
        {strongest && <RungCard mixture={strongest} title={w.strongestWithin} id="strongest" {...shared} />}
        {least && <RungCard mixture={least} title={w.leastThatWorks} id="least" {...shared} />}
        {answer.to_try.map((one, index) => <RungCard key={one.recipe} mixture={one} title={one.recipe} id={`try-${index}`} {...shared} />)}
      </ol>
    </section>
  );
}

/** Go, not yet or do not: before the ladder. */
export function Examined({ answer }: { answer: LadderAnswer }) {
  const { verdict, in_short, changes } = answer.examination;
  return (
    <section class={verdict === "go" ? "" : "panel no-window"}>
      <p role={verdict === "do not" ? "alert" : undefined}>{in_short}</p>
      {changes.length > 0 && <Fold title={words.value.painting.examination}>{() => <ul>{changes.map((one) => <li key={one}>{one}</li>)}</ul>}</Fold>}
    </section>
  );
}

function FirstLine({ answer }: { answer: LadderAnswer }) {
  const w = words.value.ladder;
  if (answer.rungs.length === 0) return null;
  const measured = new Map(answer.what_to_measure.mixtures.map((one) => [one.name, one]));
  const people = new Map(answer.person.mixtures.map((one) => [one.name, one]));
  return (
    <section>
      <h3>{w.line(1, answer.bottles.join(", "))}</h3>
      <p class="soft">{w.vialHolds(figure(answer.what_to_measure.vial_mL))}</p>
      <ol class="rungs">
        {answer.rungs.map((mixture, index) => {
          const mark = String(index + 1);
          return <RungCard key={mark} mixture={mixture} title={w.rung(mark)} id={`rung-${mark}`} mark={mark} explained={`rung ${mark}`} target={answer.target} order={answer.bottles} measured={measured.get(mark)} person={people.get(mark)} />;
        })}
      </ol>
    </section>
  );
}

function OtherLines({ answer }: { answer: LadderAnswer }) {
  const w = words.value.ladder;
  return (
    <>
      {answer.lines.filter((line) => line.number > 1).map((line) => (
        <Fold key={line.number} of="panel" title={w.line(line.number, line.bottles.join(", "))}>{() => <>
          {line.family && <p>{w.family(line.family)}</p>}
          <ol class="rungs">
            {line.rungs.map((mixture, index) => <RungCard key={mixture.recipe} mixture={mixture} title={w.rung(String(index + 1))} id={`line-${line.number}-${index + 1}`} explained={`line ${line.number} rung ${index + 1}`} target={answer.target} order={line.bottles} />)}
          </ol>
        </>}</Fold>
      ))}
    </>
  );
}

/** Whether what is shown is of now, and if not why. */
export function LadderState() {
  const w = words.value.ladder;
  const { isCurrent, exit, faults, notes, value } = ladder.value;
  if (hasNoBottles.value) return <NoBottles />;
  const isFaulty = exit > 1;
  const isFailed = exit === 4;
  const told = isStopped.value ? w.stopped : isFailed ? w.failed : isFaulty ? (value ? w.faulty : w.faultyFirst) : w.working;
  return (
    <>
      <p class={isCurrent ? "hidden-text" : "warn"} role="status">{isCurrent ? w.upToDate : told}</p>
      {isFaulty && <Faults faults={faults} notes={notes} />}
      {(isStopped.value || isFailed) && <button type="button" onClick={() => void askAll()}>{w.askAgain}</button>}
    </>
  );
}

export function LadderPart() {
  const w = words.value.ladder;
  if (jobText.value === "") return <section><h2>{w.title}</h2><p>{w.nothingOpen}</p></section>;
  const answer = ladder.value.value;
  return (
    <section aria-labelledby="ladder-title">
      <h2 id="ladder-title">{w.title}</h2>
      <LadderState />
      <Limits />
      {answer && !hasNoBottles.value && (
        <div class={ladder.value.isCurrent ? "" : "stale"}>
          <Examined answer={answer} />
          <p>{w.targetIs(answer.target)}</p>
          <NoWindow answer={answer} />
          <InShort answer={answer} />
          <FromStudio answer={answer} />
          <FirstLine answer={answer} />
          <Nearest answer={answer} />
          <OtherLines answer={answer} />
        </div>
      )}
      {answer && <ToldBeside answer={answer} />}
      {answer && <Charts />}
      {answer && !hasNoBottles.value && ladder.value.exit <= 1 && <Ways isNeeded={answer.outcome !== "window"} />}
      <Said title={w.asTheProgram} kind="ladder-text" question={{ command: "ladder", words: [jobFile] }} />
    </section>
  );
}
