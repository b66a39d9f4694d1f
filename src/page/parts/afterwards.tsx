// What may be put on when the cleaning is done: candidates by their weakest link, each answer with who says so.
import "./afterwards.css";
import { signal } from "@preact/signals";
import type { AfterwardsAnswer } from "../answers";
import { jobFile } from "../state";
import { words } from "../words/words";
import { CandidateCard, shownMixture } from "./afterwards/candidate";
import { CellLine } from "./afterwards/cell";
import { Coats, coatName } from "./afterwards/coats";
import type { Stack } from "./afterwards/types";
import { Fold } from "./fold";
import { hasNoBottles, NoBottles } from "./no_bottles";
import { ToldState, untold, useTold, type Told } from "./told_of";

const told = signal<Told<AfterwardsAnswer>>(untold);
const lights = ["", "dark", "uv_filtered", "daylight", "strong"] as const;
/** What is asked besides the job, on the paper as on the step. */
export const afterwardsLight = signal<(typeof lights)[number]>("");
export const afterwardsLiquids = signal("");

function Asking() {
  const w = words.value.afterwards;
  return (
    <div class="fields">
      <div class="field short">
        <label for="afterwards-light">{w.light}</label>
        <select id="afterwards-light" value={afterwardsLight.value} onChange={(event) => (afterwardsLight.value = lights.find((one) => one === event.currentTarget.value) ?? "")}>
          {lights.map((one) => <option key={one} value={one}>{w.lights[one]}</option>)}
        </select>
      </div>
      <div class="field">
        <label for="afterwards-liquids">{w.liquids}</label>
        <input id="afterwards-liquids" autocomplete="off" value={afterwardsLiquids.value} aria-describedby="afterwards-liquids-hint" onChange={(event) => (afterwardsLiquids.value = event.currentTarget.value.trim())} />
        <span id="afterwards-liquids-hint" class="soft">{w.liquidsHint}</span>
      </div>
    </div>
  );
}

function Candidates({ answer, group }: { answer: AfterwardsAnswer; group: "retouching" | "varnish" }) {
  const w = words.value.afterwards;
  const stacks = answer.stacks.filter((one) => one.group === group);
  return (
    <section>
      <h3>{w.groups[group]}</h3>
      {stacks.length === 0 && <p>{w.none}</p>}
      <ol class="candidates">{stacks.map((one) => <CandidateCard key={one.rank} stack={one} answer={answer} />)}</ol>
    </section>
  );
}

/** Each retouching with the varnish that suits it best, in each of its places. */
function Places({ answer }: { answer: AfterwardsAnswer }) {
  const w = words.value.afterwards;
  const of = (rank: number, group: "under" | "over" | "between"): Stack | undefined => answer.stacks.find((one) => one.rank === rank && one.group === group);
  return (
    <section>
      <h3>{w.places}</h3>
      {answer.places.map(({ retouching, best }, index) => {
        const stacks = ([best, best === "under" ? "over" : "under", "between"] as const).map((group) => ({ group, stack: of(index + 1, group) }));
        const name = stacks.flatMap(({ stack }) => stack?.coats.find((coat) => coat.material === retouching)?.name ?? [])[0] ?? retouching;
        return (
          <Fold key={retouching} of="panel" title={`${name}: ${w.best} ${w.placeOf[best]}`}>{() => (
            <ol class="candidates">
              {stacks.map(({ group, stack }) => stack && <CandidateCard key={group} stack={stack} answer={answer} title={`${name} ${w.placeOf[group]}`} />)}
            </ol>
          )}</Fold>
        );
      })}
    </section>
  );
}

function Mixtures({ answer }: { answer: AfterwardsAnswer }) {
  const w = words.value.afterwards;
  const coats = answer.stacks.find((one) => one.group === "asked")?.coats ?? answer.painting;
  return (
    <>
      {answer.mixtures.map((one) => (
        <section key={one.mixture} class="panel">
          <h3>{w.mixtureDoes(shownMixture(one.mixture))}</h3>
          {coats.map((coat, index) => ({ coat, judged: one.coats[index] })).reverse().map(({ coat, judged }) => judged && (
            <div key={coat.name}>
              {coat.kind !== "original" && <CellLine what={`${coatName(coat)}: ${w.comesOff}`} judged={judged.comes_off} answer={answer} />}
              <CellLine what={w.spared(coatName(coat))} judged={judged.touched} answer={answer} isTouching />
            </div>
          ))}
        </section>
      ))}
    </>
  );
}

function Besides({ answer }: { answer: AfterwardsAnswer }) {
  const w = words.value.afterwards;
  const citation = (key: string) => answer.sources.find((one) => one.key === key)?.citation ?? key;
  return (
    <section class="panel">
      <h3>{w.general}</h3>
      <ul>{answer.general.map((one) => <li key={one.what}>{one.words} <span class="soft">({citation(one.source)})</span></li>)}</ul>
      <Fold title={w.dangers}>{() => <ul>{answer.dangers.map((one) => <li key={one.mixture}>{shownMixture(one.mixture)}: {one.words}</li>)}</ul>}</Fold>
      <Fold title={w.means}>{() => <p>{answer.legend}</p>}</Fold>
      <p>{answer.not_told}</p>
    </section>
  );
}

export function AfterwardsPart() {
  const w = words.value.afterwards;
  const telling = useTold("afterwards", told, () => {
    const options: Record<string, string> = { format: "json" };
    if (afterwardsLight.value !== "") options["light"] = afterwardsLight.value;
    if (afterwardsLiquids.value !== "") options["liquid"] = afterwardsLiquids.value;
    return hasNoBottles.value ? null : { command: "afterwards", words: [jobFile], options };
  });
  const answer = told.value.value;
  const asked = answer?.stacks.find((one) => one.group === "asked");
  return (
    <section aria-labelledby="afterwards-title">
      <h2 id="afterwards-title">{w.title}</h2>
      <p>{w.intro}</p>
      {hasNoBottles.value ? <NoBottles /> : <><Asking /><ToldState told={told.value} telling={telling} /></>}
      {answer && !hasNoBottles.value && (
        <div class={telling.isCurrent && told.value.exit <= 1 ? "" : "stale"}>
          <p class="warn">{answer.safety}</p>
          <h3>{asked ? w.asked : w.lies}</h3>
          <Coats coats={asked?.coats ?? answer.painting} label={asked ? w.asked : w.lies} />
          {asked && <ol class="candidates"><CandidateCard stack={asked} answer={answer} title={asked.coats.filter((coat) => coat.proposed).map((coat) => coat.name).join(" / ")} /></ol>}
          <Mixtures answer={answer} />
          <Candidates answer={answer} group="retouching" />
          <Candidates answer={answer} group="varnish" />
          <Places answer={answer} />
          <Besides answer={answer} />
        </div>
      )}
    </section>
  );
}
