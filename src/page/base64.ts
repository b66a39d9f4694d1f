// Bytes as text that a log or the browser's store can hold, and back.
export function toBase64(bytes: Uint8Array): string {
  let text = "";
  // In pieces: a call takes only so many arguments.
  for (let from = 0; from < bytes.length; from += 8192) text += String.fromCharCode(...bytes.subarray(from, from + 8192));
  return btoa(text);
}

export const fromBase64 = (text: string): Uint8Array => Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
