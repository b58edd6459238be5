/**
 * What a JSON pointer (RFC 6901) points at.
 * @throws {RangeError} where there is nothing there
 * @example pointed({ a: [{ "b/c": 7 }] }, "/a/0/b~1c"); // => 7
 */
export function pointed(json: unknown, pointer: string): unknown {
  let at = json;
  for (const step of pointer.split("/").slice(1)) {
    const key = step.replaceAll("~1", "/").replaceAll("~0", "~");
    if (typeof at !== "object" || at === null || !Object.hasOwn(at, key))
      throw new RangeError(`the plan file has nothing at ${pointer}`);
    at = (at as Readonly<Record<string, unknown>>)[key];
  }
  return at;
}
