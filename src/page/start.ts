// Unpacks the page's script, which travels packed as the engine does, and starts it.
import { unpacked } from "./engine/packed";

async function start(): Promise<void> {
  const script = document.createElement("script");
  script.textContent = new TextDecoder().decode(await unpacked(document.getElementById("page-script")?.textContent ?? ""));
  document.body.append(script);
}

start().catch((fault) => {
  const place = document.getElementById("starting");
  if (place) place.textContent = `This browser cannot run the page (${String(fault)}). A current Chrome, Edge, Firefox or Safari can.`;
});
