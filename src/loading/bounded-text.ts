/**
 * The text of an answer, and no more of it than `most` bytes: a file of another kind can be of any size. One that is too
 * long is given up as soon as that is known, before the rest of it is paid for.
 * @returns null where it is too long
 */
export async function readBoundedText(
  response: Response,
  most: number,
): Promise<{ text: string; bytes: number } | null> {
  // Of a packed file this is the packed length: what is too long packed is too long.
  const isTooLong = Number(response.headers.get("content-length")) > most;
  const reader = response.body?.getReader();
  const decoder = new TextDecoder();
  const pieces: string[] = [];
  let bytes = 0;
  for (;;) {
    if (isTooLong || bytes > most) {
      reader?.cancel().catch(() => {});
      return null;
    }
    const { done, value } = (await reader?.read()) ?? { done: true, value: undefined };
    if (done) return { text: pieces.join("") + decoder.decode(), bytes };
    bytes += value.length;
    pieces.push(decoder.decode(value, { stream: true }));
  }
}
