// Hazards of a bottle and what the law asks, as the engine's record has it. What is missing is said to be missing.
import { signal } from "@preact/signals";
import type { CardsAnswer } from "../answers";
import { ask } from "../engine/engine";
import { holdsMore, recordOf } from "../names";
import { words } from "../words/words";
import { figure } from "./figures";
import { solvents } from "./solvents";

type Card = Extract<CardsAnswer["cards"][number], { kind: "solvent" }>;
type Group = Card["groups"][number];
type Figure = Group["figures"][number];

/** By the name of the file; null where there is no record. */
const cards = signal<ReadonlyMap<string, Card | null>>(new Map());
const asked = new Set<string>();

async function lookUp(written: string): Promise<void> {
  if (asked.has(written) || written === "") return;
  asked.add(written);
  const answer = await ask(`show ${written}`, { command: "show", words: [written], options: { format: "json" } });
  if (answer.exit === 130 || answer.exit === 4) {
    asked.delete(written);
    return;
  }
  const found = answer.exit === 0 ? (JSON.parse(answer.text) as CardsAnswer).cards.find((card) => card.kind === "solvent") : undefined;
  cards.value = new Map(cards.peek()).set(written, found ?? null);
}

// Fire, hazards and limits for the air: what somebody with the bottle in the hand must know.
const isWanted = (group: Group) => group.figures.some((one) => ["flash_point_C", "hazard_statement", "signal_word", "exposure_limit"].includes(one.figure));

function FigureRow({ one }: { one: Figure }) {
  const chosen = one.known ? one.chosen : undefined;
  const value = chosen?.words ?? (chosen?.values ? `${chosen.values.map((one) => figure(one, 6)).join(" – ")} ${one.unit ?? ""}` : "");
  return (
    <>
      <dt>{one.title}</dt>
      {chosen
        ? <dd>{value}{chosen.note && <span class="soft"> ({chosen.note})</span>} <span class="soft small">{words.value.shelf.source(chosen.standing ?? "", chosen.source ?? "")}</span></dd>
        : <dd class="warn">{(!one.known && one.unknown) || words.value.painting.not_known}</dd>}
    </>
  );
}

function Details({ written }: { written: string }) {
  const text = words.value.shelf;
  const card = cards.value.get(written);
  if (card === undefined) return <p class="soft" role="status">{text.looking_up}</p>;
  if (card === null) return <p class="warn">{text.not_found}</p>;
  return (
    <>
      {card.groups.filter(isWanted).map((group) => (
        <div key={group.title}>
          <p class="group">{group.title}</p>
          <dl>{group.figures.map((one, i) => <FigureRow key={i} one={one} />)}</dl>
        </div>
      ))}
      {card.facts.remark && <p>{card.facts.remark}</p>}
    </>
  );
}

/** At once what the list of liquids says; all of the record once somebody opens it, since that takes the engine long. */
export function Hazards({ written, name }: { written: string; name: string }) {
  const text = words.value.shelf;
  const row = solvents.value.find((one) => one.id === recordOf(written, "solvent"));
  const isMissing = row !== undefined && !row.hazard_statements;
  return (
    <>
      {row && <p class={isMissing ? "warn" : ""}>{isMissing ? text.no_record : `${text.signal(row.signal_word ?? "")}; ${row.hazard_statements}`}</p>}
      {row?.restrictions && <p>{text.law(row.restrictions)}</p>}
      {row && holdsMore(written, "solvent") && <p class="warn">{text.holds_more(row.name)}</p>}
      {!row && <p class="warn">{solvents.value.length > 0 ? text.not_found : text.looking_up}</p>}
      <details onToggle={(event) => { if (event.currentTarget.open) void lookUp(written); }}>
        <summary>{text.hazards(name)}</summary>
        <Details written={written} />
      </details>
    </>
  );
}
