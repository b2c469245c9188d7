/**
 * Reads an answer as JSON, and no more of it than `most` bytes: a file of another kind can be of any size.
 * @throws Error in words about the file, where it is too large or no JSON
 */
export async function readBoundedJson(response: Response, most: number): Promise<unknown> {
  const tooLarge = () => new Error(`is larger than ${most} bytes`);
  if (Number(response.headers.get("content-length")) > most) throw tooLarge();
  const reader = response.body?.getReader();
  const decoder = new TextDecoder();
  let text = "";
  let size = 0;
  for (let piece = await reader?.read(); piece && !piece.done; piece = await reader?.read()) {
    size += piece.value.byteLength;
    if (size > most) {
      void reader?.cancel().catch(() => {});
      throw tooLarge();
    }
    text += decoder.decode(piece.value, { stream: true });
  }
  try {
    return JSON.parse(text + decoder.decode());
  } catch {
    throw new Error("is no JSON");
  }
}
