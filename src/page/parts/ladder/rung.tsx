// One rung: its vial, what to measure, what is believed of it, its hazards; figures on demand.
import { words } from "../../words/words";
import { figure, percent } from "../figures";
import { Fold } from "../fold";
import { pointedRung } from "../pointed";
import { Said } from "../said";
import { Worked } from "../worked";
import { jobFile } from "../../state";
import type { ForPerson, Measured, Mixture } from "./types";
import { Swatch, Vial } from "./vial";

/** The program's word for a chance; its figures stand under "figures", and alone only where no word came. */
export function chanceText(chance: number | null, said: string | null): string {
  const w = words.value.ladder;
  if (chance === null) return w.notKnown;
  if (!said) return percent(chance);
  return (w.chance as Record<string, string>)[said] ?? said;
}

function Amounts({ mixture, measured, order, id }: { mixture: Mixture; measured: Measured | undefined; order: string[]; id: string }) {
  const w = words.value.ladder;
  const place = (liquid: string) => Math.max(0, order.indexOf(liquid));
  return (
    <ul class="amounts">
      {measured
        ? measured.volumes.map((one) => <li key={one.liquid}><Swatch place={place(one.liquid)} id={`${id}-m${place(one.liquid)}`} />{w.volume(one.liquid, figure(one.mL))}</li>)
        : mixture.parts.map((one) => <li key={one.liquid}><Swatch place={place(one.liquid)} id={`${id}-s${place(one.liquid)}`} />{w.share(one.liquid, figure(one.volume_percent))}</li>)}
      {measured?.top_up_mL != null && <li class="soft">{w.topUp(figure(measured.top_up_mL, 1))}</li>}
      {measured?.as_measured && <li class="warn">{w.asMeasured(measured.as_measured.recipe)}</li>}
    </ul>
  );
}

function NotKnown({ mixture, person }: { mixture: Mixture; person: ForPerson | undefined }) {
  const w = words.value.ladder;
  const h = mixture.hazards_of_parts;
  const lines = [
    h.parts_without_hazard_record.length > 0 && w.noHazardRecord(h.parts_without_hazard_record.join(", ")),
    h.parts_without_flash_point.length > 0 && w.noFlashPoint(h.parts_without_flash_point.join(", ")),
    h.parts_without_exposure_limit.length > 0 && w.noExposureLimit(h.parts_without_exposure_limit.join(", ")),
    person && !person.label_complete && w.labelIncomplete,
    !mixture.fate.drift_known && w.driftNotKnown(mixture.fate.drift_missing.join(", ")),
  ].filter((line): line is string => typeof line === "string");
  return <>{lines.map((line) => <li key={line} class="warn">{line}</li>)}</>;
}

export function Hazards({ mixture, person, title = mixture.recipe }: { mixture: Mixture; person: ForPerson | undefined; title?: string }) {
  const w = words.value.ladder;
  const h = mixture.hazards_of_parts;
  return (
    <Fold title={h.signal_word ? `${w.hazards}: ${h.signal_word}` : w.hazards}>{() => <>
      <ul>
        <NotKnown mixture={mixture} person={person} />
        {h.statements.map((one) => <li key={one.code}>{one.words} <span class="soft">({one.code})</span></li>)}
        {h.lowest_flash_point_C !== null && <li>{w.flashPoint(figure(h.lowest_flash_point_C, 0), h.lowest_flash_point_of ?? "")}</li>}
        {h.lowest_exposure_limit_ppm !== null && <li>{w.exposureLimit(figure(h.lowest_exposure_limit_ppm), h.lowest_exposure_limit_of ?? "")}</li>}
      </ul>
      <Worked what={`flash point ${mixture.recipe}`} title={words.value.worked.flash} name={`${words.value.worked.flash}: ${title}`} />
    </>}</Fold>
  );
}

function Figures({ mixture, title }: { mixture: Mixture; title: string }) {
  const w = words.value.ladder;
  return (
    <Fold title={w.figures}>{() => <>
      <div class="scrolls" tabIndex={0} role="group" aria-label={`${w.figures}: ${title}`}>
        <table>
          <thead><tr><th scope="col">{w.layer}</th><th scope="col">{w.chanceColumn}</th><th scope="col">{w.RED}</th><th scope="col">{w.REDrange}</th></tr></thead>
          <tbody>
            {mixture.layers.map((one) => (
              <tr key={one.layer}>
                <th scope="row">{one.layer}</th>
                <td>{one.chance === null ? w.notKnown : percent(one.chance)}</td>
                <td>{one.RED === null ? w.notKnown : figure(one.RED)}</td>
                <td>{one.RED_low === null ? w.notKnown : `${figure(one.RED_low)} – ${figure(one.RED_high)}`}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p>{w.hansen(figure(mixture.dD_MPa05), figure(mixture.dP_MPa05), figure(mixture.dH_MPa05))}</p>
      <p>{w.phases(mixture.fate.phases_because ?? mixture.fate.phases ?? w.notKnown)}</p>
      {mixture.fate.leaves_last && <p>{w.drying(mixture.fate.leaves_last)}</p>}
    </>}</Fold>
  );
}

interface Props {
  mixture: Mixture;
  title: string;
  id: string;
  /** The mark of the pictures, for rungs that stand in them. */
  mark?: string;
  /** The rung as the program names it; else its mixture is explained. */
  explained?: string;
  target: string;
  order: string[];
  measured?: Measured | undefined;
  person?: ForPerson | undefined;
}

function Believed({ mixture, target }: { mixture: Mixture; target: string }) {
  const w = words.value.ladder;
  return (
    <dl class="believed">
      <div><dt>{w.effectOn(target)}</dt><dd>{chanceText(mixture.effect, mixture.effect_words)}</dd></div>
      <div><dt>{w.riskTo(mixture.riskiest_layer ?? w.whatStays)}</dt><dd>{chanceText(mixture.risk, mixture.risk_words)}</dd></div>
    </dl>
  );
}

function Pointer({ mark, title }: { mark: string; title: string }) {
  const isPointed = pointedRung.value === mark;
  const point = () => (pointedRung.value = isPointed ? null : mark);
  return <button type="button" class="point" aria-pressed={isPointed} aria-label={`${words.value.ladder.lightUp}: ${title}`} onClick={point}>{words.value.ladder.lightUp}</button>;
}

export function RungCard({ mixture, title, id, mark, explained, target, order, measured, person }: Props) {
  const w = words.value.ladder;
  const isPointed = mark !== undefined && pointedRung.value === mark;
  // The risk above speaks of the layers that can be judged; the others are named, never passed over.
  const unjudged = mixture.layers.filter((one) => one.role === "keep" && one.chance === null);
  const flips = mixture.layers.filter((one) => one.may_flip);
  return (
    <li class={`rung panel${isPointed ? " pointed" : ""}`} onPointerEnter={() => mark && (pointedRung.value = mark)}>
      <div class="rung-head">
        <Vial mixture={mixture} order={order} id={id} title={w.vialOf(mixture.recipe)} />
        <div>
          <h4>{title}</h4>
          <Amounts mixture={mixture} measured={measured} order={order} id={id} />
        </div>
      </div>
      <Believed mixture={mixture} target={target} />
      <ul class="remarks">
        {unjudged.map((one) => <li key={one.layer} class="warn">{w.riskTo(one.layer)}: {w.notKnown}</li>)}
        {flips.map((one) => <li key={one.layer}>{w.mayFlip(one.layer)}</li>)}
        {mixture.fate.drifts_beyond_risk_limit && <li class="warn">{w.driftsBeyond}</li>}
        {person?.most_seconds != null && <li>{w.mostSeconds(figure(person.most_seconds))}{person.clear_with ? ` ${w.clearWith(person.clear_with)}` : ""}</li>}
        {mixture.hazards_of_parts.parts_without_hazard_record.length > 0 && <li class="warn">{w.noHazardRecord(mixture.hazards_of_parts.parts_without_hazard_record.join(", "))}</li>}
      </ul>
      {mark !== undefined && <Pointer mark={mark} title={title} />}
      <Hazards mixture={mixture} person={person} title={title} />
      <Figures mixture={mixture} title={title} />
      <Worked what={explained ?? mixture.recipe} title={words.value.worked.title} name={`${words.value.worked.title}: ${title}`} />
      <Said title={w.wholeVial} name={`${w.wholeVial}: ${title}`} kind={`vial:${id}`} question={{ command: "vial", words: [jobFile, mixture.recipe] }} />
    </li>
  );
}
