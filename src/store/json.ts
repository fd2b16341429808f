/** JSON columns. What they hold is known only once it went through its schema. */
export function fromJson(text: string): unknown {
  return JSON.parse(text);
}
