// The page as a whole: the steps of the work, in their order.
import "./page.css";
import { signal } from "@preact/signals";
import { render } from "preact";
import { ask, startEngine } from "./engine/engine";
import { followFiles } from "./state";
import { words } from "./words/words";

const steps = ["painting", "shelf", "ladder", "easel", "papers"] as const;
type Step = (typeof steps)[number];
export const step = signal<Step>("painting");

function Page() {
  return (
    <>
      <h1>{words.value.page.title}</h1>
      <nav>{steps.map((one) => <button key={one} type="button" onClick={() => (step.value = one)}>{words.value.page.steps[one]}</button>)}</nav>
    </>
  );
}

// The one way in for the tests in real browsers.
Object.assign(window, { gentlest: { ask } });
startEngine();
followFiles();
const place = document.getElementById("page");
if (place) {
  place.textContent = "";
  render(<Page />, place);
}
