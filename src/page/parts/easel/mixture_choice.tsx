// The mixture of the card: as proposed, any rung, what comes before solvents, or typed.
import { ladder } from "../../state";
import { words } from "../../words/words";
import { rungOf } from "../ladder/rung_of";
import { isClosed } from "./closed";
import { card, fill, isBegun, isTypedMixture, mixtureOfCard, proposedMixture } from "./test_card";
import { FieldFaults, hasFault, sayer } from "./tiles";

const blanks = ["dry swab", "saliva", "water"];
const typed = "\n"; // no mixture is called so

function Rungs() {
  const w = words.value.easel.mixture;
  const answer = ladder.value.value;
  const marked = (recipe: string, shown: string) => (isClosed(recipe) ? w.closed(shown) : shown);
  return (
    <>
      <optgroup label={w.line(1)}>
        {answer?.rungs.map((one, index) => <option key={index} value={one.recipe}>{marked(one.recipe, w.rung(String(index + 1), one.recipe))}</option>)}
      </optgroup>
      {answer?.lines.filter((line) => line.number > 1).map((line) => (
        <optgroup key={line.number} label={w.line(line.number)}>
          {line.rungs.map((one, index) => <option key={index} value={one.recipe}>{marked(one.recipe, w.lineRung(line.number, index + 1, one.recipe))}</option>)}
        </optgroup>
      ))}
    </>
  );
}

export function MixtureChoice() {
  const w = words.value.easel.mixture;
  const mixture = mixtureOfCard();
  const isKnown = blanks.includes(mixture) || rungOf(mixture) !== undefined;
  const proposed = proposedMixture();
  const isTyped = isTypedMixture.value || (mixture !== "" && mixture !== proposed && !isKnown);
  const choose = (value: string) => {
    isTypedMixture.value = value === typed;
    fill("mixture", value === typed ? "" : value);
  };
  return (
    <div class="field mixture">
      <label for="test-mixture">{w.title}</label>
      <select id="test-mixture" class="touch" value={isTyped ? typed : mixture} aria-invalid={hasFault("mixture")} aria-describedby={hasFault("mixture") ? "fault-mixture" : undefined} onChange={(event) => choose(event.currentTarget.value)}>
        {proposed && <option value={proposed}>{w.proposed(proposed)}</option>}
        {(!proposed || mixture === "") && <option value="">{w.noProposal}</option>}
        <optgroup label={w.blanks}>{blanks.map((one) => <option key={one} value={one}>{sayer(one)}</option>)}</optgroup>
        <Rungs />
        <option value={typed}>{w.other}</option>
      </select>
      {isTyped && (
        <>
          <label for="test-typed">{w.typed}</label>
          <input id="test-typed" class="touch" autocomplete="off" value={card.value.mixture ?? ""} aria-describedby="test-typed-hint" onInput={(event) => fill("mixture", event.currentTarget.value)} />
          <span id="test-typed-hint" class="soft">{w.typedHint}</span>
        </>
      )}
      <FieldFaults of="mixture" />
      {isClosed(mixture) && <p class="danger" role="status">{w.isClosed}</p>}
      {isBegun() && proposed && card.value.mixture && proposed !== mixture && <p class="warn" role="status">{w.changed(proposed)}</p>}
    </div>
  );
}
