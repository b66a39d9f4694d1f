// One answer: whether something holds, on what that rests, and who says so when it is asked for.
import type { AfterwardsAnswer, Judged } from "../../answers";
import { words } from "../../words/words";
import { percent } from "../figures";
import { Fold } from "../fold";

const signs = { yes: "✓", test_first: "!", not_known: "?", no: "✕" } as const;

export function Verdict({ verdict }: { verdict: Judged["verdict"] }) {
  return <strong class={`verdict ${verdict}`}><span aria-hidden="true">{signs[verdict]} </span>{words.value.afterwards.verdicts[verdict]}</strong>;
}

/** "known", "by common practice", "estimated" ... */
function restsOn(judged: Judged): string {
  const w = words.value.afterwards;
  return judged.basis === "known" && judged.witness ? w.witness[judged.witness] : w.bases[judged.basis];
}

/** "yes, known", "not known". */
export function answerOf(judged: Judged): string {
  const w = words.value.afterwards;
  const verdict = w.verdicts[judged.verdict];
  return judged.verdict === "not_known" && judged.basis === "not_known" ? verdict : `${verdict}, ${restsOn(judged)}`;
}

function Voices({ judged, answer }: { judged: Judged; answer: AfterwardsAnswer }) {
  const w = words.value.afterwards;
  if (judged.voices.length === 0) return <p class="soft">{w.nobody}.</p>;
  const said = judged.voices.map(({ source, standing, cite, note }) => {
    const who = standing === "seen" ? answer.sources.find((one) => one.key === source)?.citation ?? source : w.witness[standing];
    return [[who, cite].filter(Boolean).join(": "), note].filter(Boolean).join("; ");
  });
  return <ul>{[...new Set(said)].map((one) => <li key={one}>{one}</li>)}</ul>;
}

interface Props {
  what: string;
  judged: Judged;
  answer: AfterwardsAnswer;
  /** The chance is that of touching, not of coming off. */
  isTouching?: boolean;
  isNoLoss?: boolean;
}

export function CellLine({ what, judged, answer, isTouching = false, isNoLoss = false }: Props) {
  const w = words.value.afterwards;
  const { chance, by_sphere } = judged;
  return (
    <Fold of="cell" title={`${signs[judged.verdict]} ${what}: ${answerOf(judged)}${isNoLoss ? ` (${w.noLoss})` : ""}`}>{() => <>
      <p>{w.whys[judged.why]}.</p>
      {chance !== null && <p>{isTouching ? w.chanceTouched(percent(chance)) : w.chanceOff(percent(chance))}</p>}
      {chance === null && by_sphere !== null && <p>{w.bySphere(percent(by_sphere))}</p>}
      <Voices judged={judged} answer={answer} />
    </>}</Fold>
  );
}
