// Bytes as text, a byte order mark with it: the reader that the browser has by itself drops that.

/** Nothing where the bytes are no UTF-8. */
export function decoded(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** With a mark in the place of each byte that is no UTF-8. */
export const loosely = (bytes: Uint8Array): string => new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);
