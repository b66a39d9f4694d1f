// What finished paintings changed in this plan.
import type { LadderAnswer } from "../../answers";
import { words } from "../../words/words";
import { figure } from "../figures";
import { Fold } from "../fold";

export function FromStudio({ answer }: { answer: LadderAnswer }) {
  const w = words.value.studio;
  const layers = answer.studio ?? [];
  if (layers.length === 0) return null;
  const range = ({ dD, dP, dH, R0 }: (typeof layers)[number]["now"]) => `dD ${figure(dD, 1)}, dP ${figure(dP, 1)}, dH ${figure(dH, 1)}, R0 ${figure(R0, 1)}`;
  return (
    <section class="from-studio">
      <h3>{w.onLadder}</h3>
      <ul>{layers.map((one) => <li key={one.layer}>{w.layer(one.layer, figure(one.moved, 1), one.paintings)}</li>)}</ul>
      <Fold title={words.value.ladder.figures} name={`${words.value.ladder.figures}: ${w.onLadder}`}>{() => (
        <ul>{layers.map((one) => <li key={one.layer}>{w.range(one.layer)}: {w.now} {range(one.now)}; {w.without} {range(one.without)}</li>)}</ul>
      )}</Fold>
    </section>
  );
}
