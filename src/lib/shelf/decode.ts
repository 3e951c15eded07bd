// Bytes to text, strictly: a worksheet is UTF-8 and nothing else. A wrong byte is never replaced in
// silence, because the file would then be saved back with other bytes than it had.

export type Decoded =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'refused'; readonly reason: string };

const startsWith = (bytes: Uint8Array, ...head: number[]): boolean =>
  head.every((byte, index) => bytes[index] === byte);

/** The first line, from 1, on which the bytes stop being UTF-8. */
function firstBadLine(bytes: Uint8Array): number {
  // Each line is decoded alone: 0x0A never stands inside a UTF-8 sequence (RFC 3629, section 3).
  let line = 1;
  for (let from = 0; from <= bytes.length; line++) {
    const end = bytes.indexOf(0x0a, from);
    const to = end < 0 ? bytes.length : end;
    try {
      new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(from, to));
    } catch {
      return line; // the decoder's own error says only that some byte is wrong
    }
    from = to + 1;
  }
  return line;
}

/**
 * Text of UTF-8 bytes; a byte order mark is kept as U+FEFF so that nothing of the file is lost.
 *
 * Fails   'refused' for UTF-16, for a NUL byte, and for bytes that are not UTF-8, with the line
 */
export function decodeText(bytes: Uint8Array): Decoded {
  if (startsWith(bytes, 0xff, 0xfe) || startsWith(bytes, 0xfe, 0xff)) {
    return { kind: 'refused', reason: 'it begins with the mark of UTF-16' };
  }
  if (bytes.includes(0)) return { kind: 'refused', reason: 'it holds a NUL byte' };
  try {
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
    return { kind: 'text', text };
  } catch {
    return { kind: 'refused', reason: `a byte on line ${firstBadLine(bytes)} belongs to another encoding` }; // prettier-ignore
  }
}
