// Photographs, made smaller before they are kept: whatever is behind them stays in the browser.
import { computed, signal } from "@preact/signals";
import { logText } from "../state";

/** The whole painting, as the background of the map here and on the papers; only in memory. */
export const paintingPhotograph = signal<{ name: string; address: string; bytes: Uint8Array } | null>(null);

async function pictureOf(file: Blob): Promise<ImageBitmap | HTMLImageElement> {
  try {
    return await createImageBitmap(file, { imageOrientation: "from-image" });
  } catch {
    const address = URL.createObjectURL(file);
    const picture = new Image();
    picture.src = address;
    try {
      await picture.decode();
    } finally {
      URL.revokeObjectURL(address);
    }
    return picture;
  }
}

/** A JPEG with neither side above `most_px`; null where the browser cannot read the file as a picture. */
export async function shrunk(file: Blob, most_px: number): Promise<Blob | null> {
  try {
    const picture = await pictureOf(file);
    const scale = Math.min(1, most_px / Math.max(picture.width, picture.height));
    const canvas = document.createElement("canvas");
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    const brush = canvas.getContext("2d");
    if (!brush) return null;
    brush.fillStyle = "#fff"; // JPEG knows no transparency
    brush.fillRect(0, 0, canvas.width, canvas.height);
    brush.drawImage(picture, 0, 0, canvas.width, canvas.height);
    return await new Promise((resolve) => canvas.toBlob(resolve, "image/jpeg", 0.8));
  } catch {
    return null;
  }
}

/** False where the file is no picture. */
export async function takePaintingPhotograph(file: File): Promise<boolean> {
  const small = await shrunk(file, 1600);
  if (!small) return false;
  removePaintingPhotograph();
  paintingPhotograph.value = { name: file.name, address: URL.createObjectURL(small), bytes: new Uint8Array(await small.arrayBuffer()) };
  return true;
}

export function removePaintingPhotograph(): void {
  if (paintingPhotograph.peek()) URL.revokeObjectURL(paintingPhotograph.peek()?.address ?? "");
  paintingPhotograph.value = null;
}

/** The photographs that the log keeps, by name (docs/data-format.md, "Photographs in the log"). */
const keptInLog = computed(() => {
  const kept = new Map<string, string>();
  for (const line of logText.value.split("\n")) {
    if (!line.startsWith('{"photograph":')) continue;
    try {
      const { photograph, jpeg } = JSON.parse(line) as { photograph: string; jpeg: string };
      if (!kept.has(photograph)) kept.set(photograph, `data:image/jpeg;base64,${jpeg}`);
    } catch {
      // the program tells of it in its notes
    }
  }
  return kept;
});

/** Of the photographs that a field names: addresses of those in the log, and names of those kept elsewhere. */
export function keptPhotographs(field: string): { addresses: string[]; names: string[] } {
  const names = field.split(";").map((one) => one.trim()).filter(Boolean);
  return {
    addresses: names.flatMap((one) => keptInLog.value.get(one) ?? []),
    names: names.filter((one) => !keptInLog.value.has(one)),
  };
}
