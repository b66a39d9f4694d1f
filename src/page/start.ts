// Unpacks the page's script, which travels packed as the engine does, and starts it.
async function start(): Promise<void> {
  const packed = Uint8Array.from(atob(document.getElementById("page-script")?.textContent ?? ""), (letter) => letter.charCodeAt(0));
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"));
  const script = document.createElement("script");
  script.textContent = await new Response(stream).text();
  document.body.append(script);
}

start().catch((fault) => {
  const place = document.getElementById("starting");
  if (place) place.textContent = `This browser cannot run the page (${String(fault)}). A current Chrome, Edge, Firefox or Safari can.`;
});
