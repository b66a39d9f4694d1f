// A picture of the engine as nodes of the page: read as SVG, and only what a picture needs is let in.
const elements = new Set(["svg", "title", "desc", "g", "path", "rect", "circle", "ellipse", "line", "polyline", "polygon", "text", "tspan", "defs", "pattern", "clipPath"]);

function isHarmless({ name, value }: Attr): boolean {
  return !name.startsWith("on") && !/href$/i.test(name) && !(/url\(/i.test(value) && !/^url\(#[\w-]+\)$/.test(value));
}

function clean(node: Element): void {
  for (const child of [...node.children]) {
    if (elements.has(child.localName)) clean(child);
    else child.remove();
  }
  for (const attribute of [...node.attributes]) if (!isHarmless(attribute)) node.removeAttributeNode(attribute);
}

/** null where the text is no SVG. */
export function drawing(text: string): SVGSVGElement | null {
  const root = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
  if (root.localName !== "svg") return null;
  clean(root);
  root.removeAttribute("style");
  return document.adoptNode(root) as unknown as SVGSVGElement;
}

/** Marks what stands for one rung; the other rungs step back. */
export function lightUp(svg: SVGSVGElement, rung: string | null): void {
  for (const mark of svg.querySelectorAll("[data-rung]")) {
    mark.classList.toggle("lit", rung !== null && mark.getAttribute("data-rung") === rung);
    mark.classList.toggle("back", rung !== null && mark.getAttribute("data-rung") !== rung);
  }
}

const reach_px = 24;

/** The rung whose mark is at or near a place of the screen; marks are small, fingers are not. */
export function rungNear(svg: SVGSVGElement, x: number, y: number): string | null {
  let nearest: { rung: string; distance: number } | null = null;
  for (const mark of svg.querySelectorAll("[data-rung]")) {
    const box = mark.getBoundingClientRect();
    const dx = Math.max(box.left - x, 0, x - box.right);
    const dy = Math.max(box.top - y, 0, y - box.bottom);
    const distance = Math.hypot(dx, dy);
    const rung = mark.getAttribute("data-rung");
    if (rung && distance <= reach_px && (!nearest || distance < nearest.distance)) nearest = { rung, distance };
  }
  return nearest?.rung ?? null;
}
