// What the page carries packed: gzip, its bytes written as the letters of windows-1252, in which the whole file stands.
// Base64 would take a third more. Four bytes that HTML would change or understand stand behind "=", 64 further on
// (build.mjs writes them).

function bytesOf(letters: string): Uint8Array {
  const letterOf = new TextDecoder("windows-1252").decode(Uint8Array.from({ length: 256 }, (_, byte) => byte));
  const byteOf = new Map(Array.from(letterOf, (letter, byte) => [letter.charCodeAt(0), byte]));
  const bytes = new Uint8Array(letters.length);
  let length = 0;
  for (let at = 0; at < letters.length; ++at) {
    const isMoved = letters[at] === "=";
    if (isMoved) ++at;
    bytes[length++] = (byteOf.get(letters.charCodeAt(at)) ?? 0) - (isMoved ? 64 : 0);
  }
  return bytes.subarray(0, length);
}

/** The bytes that were packed. Rejects where they are damaged. */
export async function unpacked(letters: string): Promise<ArrayBuffer> {
  // Not by a Blob's stream: WebKit does not let a worker of a file:// page read one.
  const unpacking = new DecompressionStream("gzip");
  const writer = unpacking.writable.getWriter();
  void writer.write(bytesOf(letters) as Uint8Array<ArrayBuffer>).catch(() => {});
  void writer.close().catch(() => {});
  return new Response(unpacking.readable).arrayBuffer();
}
