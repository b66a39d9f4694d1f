// One proposal: its answer in words and its weakest link, in what it goes on and comes off; every answer on demand.
import type { AfterwardsAnswer } from "../../answers";
import { words } from "../../words/words";
import { Fold } from "../fold";
import { answerOf, CellLine, Verdict } from "./cell";
import { Coats, coatName } from "./coats";
import { acts, type ActInMixture, type ActName, type JudgedCoat, type Stack } from "./types";

/** A liquid by itself by its name alone. */
export const shownMixture = (mixture: string): string => (mixture.includes(",") ? mixture : mixture.replace(/ 100$/, ""));

function liquidOf(act: ActInMixture | null): string {
  const w = words.value.afterwards;
  if (act === null) return w.verdicts.not_known;
  if (act.mixture === null) return act.itself.verdict === "no" ? w.nothing : w.noLiquid;
  const remark = act.avoided ? w.avoided : act.on_shelf ? "" : w.notOnShelf;
  return `${shownMixture(act.mixture)}${remark && ` (${remark})`}`;
}

/** A liquid alone would look like a promise. */
function InDoubt({ act }: { act: ActInMixture | null }) {
  if (!act || act.mixture === null || act.itself.verdict === "yes") return null;
  return <>: <Verdict verdict={act.itself.verdict} /></>;
}

function WeakestLink({ stack }: { stack: Stack }) {
  const w = words.value.afterwards;
  const { coat, act, below } = stack.weakest_cell;
  if (stack.weakest === "yes") return <>{w.weakestYes(w.support[stack.support ?? "estimated"])}</>;
  const upper = stack.coats[coat];
  const given = upper?.[act];
  const lower = below === null ? undefined : stack.coats[below];
  const judged = below === null ? given?.itself : given?.under[below];
  if (!upper || !given || !judged) return <>{stack.weakest_words}</>;
  const isOneOfSeveral = stack.coats.filter((one) => one.proposed).length > 1;
  const what = [isOneOfSeveral && upper.name, w.when[act], lower && w.spared(coatName(lower))].filter(Boolean).join(", ");
  return <>{`${what}: ${answerOf(judged)}${judged.why === "may_not_dissolve" ? ` (${w.whys.may_not_dissolve})` : ""}`}</>;
}

function Cells({ coat, name, stack, answer }: { coat: JudgedCoat; name: ActName; stack: Stack; answer: AfterwardsAnswer }) {
  const w = words.value.afterwards;
  const act = coat[name];
  if (!act) return <p>{w.acts[name]}: {w.verdicts.not_known}</p>;
  return (
    <>
      <h5>{coat.name}: {w.acts[name]} {liquidOf(act)}</h5>
      <CellLine what={w.itself[name]} judged={act.itself} answer={answer} />
      {act.under.map((judged, below) => {
        const lower = stack.coats[below];
        return lower && <CellLine key={below} what={w.spared(coatName(lower))} judged={judged} answer={answer} isTouching isNoLoss={act.under_counts[below] === false} />;
      })}
    </>
  );
}

export function CandidateCard({ stack, answer, title }: { stack: Stack; answer: AfterwardsAnswer; title?: string }) {
  const w = words.value.afterwards;
  const proposed = stack.coats.filter((coat) => coat.proposed);
  const name = title ?? `${stack.rank}. ${proposed.map((coat) => coat.name).join(" / ")}`;
  return (
    <li class="panel candidate">
      <h4>{name}</h4>
      <dl class="believed">
        <div><dt>{w.answer}</dt><dd><Verdict verdict={stack.weakest} /></dd></div>
        <div><dt>{w.weakest}</dt><dd class="weakest"><WeakestLink stack={stack} /></dd></div>
      </dl>
      {[...proposed].reverse().map((coat) => (
        <div key={coat.name}>
          {proposed.length > 1 && <h5>{coat.name} ({w.kinds[coat.kind]})</h5>}
          <dl class="liquids">
            {acts.map((act) => <div key={act}><dt>{w.acts[act]}</dt><dd>{liquidOf(coat[act])}<InDoubt act={coat[act]} /></dd></div>)}
          </dl>
          <p class="soft">{coat.ageing === null ? w.ageingUnknown : w.ageing[coat.ageing]}.</p>
        </div>
      ))}
      <Fold title={w.everyAnswer}>{() => <>
        <Coats coats={stack.coats} label={`${w.stack}: ${name}`} />
        {[...proposed].reverse().map((coat) => acts.map((act) => <Cells key={`${coat.name} ${act}`} coat={coat} name={act} stack={stack} answer={answer} />))}
      </>}</Fold>
    </li>
  );
}
