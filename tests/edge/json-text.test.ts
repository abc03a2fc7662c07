import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { faultList } from "@/lib/edge/fault-list";
import { readJson } from "@/lib/edge/json-text";
import type { Json } from "@/lib/edge/json-tree";
import { faultsOf } from "../bad-files/bench-workshop";
import { processorMs } from "../helpers/processor-time";

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

function reading(document: string | Uint8Array): {
  readonly tree: Json | undefined;
  readonly lines: readonly string[];
} {
  const faults = faultList();
  const tree = readJson(typeof document === "string" ? bytesOf(document) : document, faults);
  return { tree, lines: faults.lines() };
}

/** The tree as JSON.parse would give it. */
function plain(tree: Json | undefined): unknown {
  if (tree instanceof Map) return Object.fromEntries([...tree].map(([key, value]) => [key, plain(value as Json)]));
  if (Array.isArray(tree)) return tree.map((value) => plain(value as Json));
  if (typeof tree === "object" && tree !== null && "written" in tree) return Number(tree.written);
  return tree;
}

describe("[FILE-1] what is read", () => {
  test.each([
    "null",
    " true ",
    '"text"',
    "[]",
    "{}",
    '\t{ "a" : [ 1 , -2 , { } ] }\r\n',
    '{"a":{"b":{"c":[[],[[]]]}}}',
    String.raw`"\"\\\/\b\f\n\r\t\u00e9\ud83c\udf3f"`,
    '"\u007f\u2028é🌿"',
    "[0,-0,1.5,1e3,1E-3,-12.50e+10]",
  ])("%j, as JSON.parse reads it", (text) => {
    expect(plain(reading(text).tree)).toEqual(JSON.parse(text));
  });

  test("one leading byte order mark", () => {
    expect(reading("\ufeff[1]").tree).toEqual([1]);
    expect(reading("\ufeff\ufeff[1]").lines).toEqual([
      'file: not JSON: "\\ufeff" at line 1, column 1, where a value is wanted',
    ]);
  });

  test("__proto__, constructor and hasOwnProperty are keys like others", () => {
    const { tree } = reading('{"__proto__": 1, "constructor": 2, "hasOwnProperty": 3}');
    expect(tree).toEqual(
      new Map([
        ["__proto__", 1],
        ["constructor", 2],
        ["hasOwnProperty", 3],
      ]),
    );
  });

  test("a number that is not written whole, or is too large to be exact, keeps its text", () => {
    const written = ["24.0", "2.4e1", "-0", "9007199254740992", "1e400", "-9007199254740992"];
    expect(reading(`[${written.join(",")}]`).tree).toEqual(written.map((text) => ({ written: text })));
    expect(reading("[24,0,-1,9007199254740991]").tree).toEqual([24, 0, -1, 9007199254740991]);
  });
});

describe("[FILE-1] what is refused, and where", () => {
  test.each([
    ["", "file: is empty; a workshop file is one JSON object"],
    [" \n\t", "file: is empty; a workshop file is one JSON object"],
    ["[1,\n 2", 'file: not JSON: the file ends too early, at line 2, column 3: "," or "]" is wanted'],
    ['{"a"', 'file: not JSON: the file ends too early, at line 1, column 5: ":" is wanted'],
    ['{"a":', "file: not JSON: the file ends too early, at line 1, column 6: a value is wanted"],
    ['{\n"a": "b', "file: not JSON: the text that begins at line 2, column 6 never ends"],
    ['"\\', "file: not JSON: the text that begins at line 1, column 1 never ends"],
    ["[1 2]", 'file: not JSON: "2" at line 1, column 4, where "," or "]" is wanted'],
    ["[1,]", 'file: not JSON: "]" at line 1, column 4, where a value is wanted'],
    ['{"a":1,}', 'file: not JSON: "}" at line 1, column 8, where a key in double quotes is wanted'],
    ["{a:1}", 'file: not JSON: "a" at line 1, column 2, where a key in double quotes is wanted'],
    ["{'a':1}", 'file: not JSON: "\'" at line 1, column 2, where a key in double quotes is wanted'],
    ["[1}", 'file: not JSON: "}" at line 1, column 3, where "," or "]" is wanted'],
    ["[] []", 'file: not JSON: "[" at line 1, column 4, where nothing may follow the document'],
    ["// why\n[]", 'file: not JSON: "/" at line 1, column 1, where a value is wanted'],
    ["[NaN]", 'file: not JSON: "N" at line 1, column 2, where a value is wanted'],
    ["[+1]", 'file: not JSON: "+" at line 1, column 2, where a value is wanted'],
    ["[01]", 'file: not JSON: "0" at line 1, column 2, where a number is wanted'],
    ["[1.]", 'file: not JSON: "1" at line 1, column 2, where a number is wanted'],
    ["[-]", 'file: not JSON: "-" at line 1, column 2, where a number is wanted'],
    ["1e", "file: not JSON: the file ends too early, at line 1, column 3: a number is cut off"],
    ["[tru]", 'file: not JSON: "t" at line 1, column 2, where a value is wanted'],
    ["[truer]", 'file: not JSON: "r" at line 1, column 6, where "," or "]" is wanted'],
    ['"a\nb"', "file: not JSON: a bad escape or a control character in the text that begins at line 1, column 1"],
    ['"\\x"', "file: not JSON: a bad escape or a control character in the text that begins at line 1, column 1"],
    ['"\\u12g4"', "file: not JSON: a bad escape or a control character in the text that begins at line 1, column 1"],
    ["\u00a0[]", 'file: not JSON: "\u00a0" at line 1, column 1, where a value is wanted'],
    ["🌿", 'file: not JSON: "🌿" at line 1, column 1, where a value is wanted'],
  ])("%j", (text, line) => {
    expect(() => JSON.parse(text) as unknown).toThrow();
    expect(reading(text)).toEqual({ tree: undefined, lines: [line] });
  });

  test("a key that occurs twice, with its path, and the first of the two is kept", () => {
    const { tree, lines } = reading('{"offers":[{},{"price":"1","pack":2,"price":"3"}],"offers":0}');
    expect(lines).toEqual([
      'offers[1].price: the key "price" occurs twice in one object; keep one of the two',
      'offers: the key "offers" occurs twice in one object; keep one of the two',
    ]);
    expect(plain(tree)).toEqual({ offers: [{}, { price: "1", pack: 2 }] });
  });

  test("keys are compared as they are read, not as they are written", () => {
    expect(reading(String.raw`{"a":1,"\u0061":2}`).lines).toHaveLength(1);
  });
});

describe("[FILE-1] bytes that are no text", () => {
  test.each([
    ["a NUL byte", [0x5b, 0x0a, 0x00, 0x5d], "file: not JSON: a NUL byte on line 2; JSON text never holds one"],
    ["a byte that is no UTF-8", [0x22, 0x0a, 0x0a, 0xff, 0x22], "on line 3 that are no character; save it as UTF-8"],
    ["an overlong character", [0x22, 0xc0, 0xaf, 0x22], "on line 1 that are no character"],
    ["a surrogate in UTF-8", [0x22, 0xed, 0xa0, 0x80, 0x22], "on line 1 that are no character"],
    ["a character cut off at the end", [0x22, 0xf0, 0x9f, 0x8c], "on line 1 that are no character"],
    ["Latin-1", [0x22, 0xe9, 0x22], "on line 1 that are no character"],
    ["UTF-16", [0xff, 0xfe, 0x7b, 0x00, 0x7d, 0x00], "file: not JSON in UTF-8: it looks like UTF-16; save it as UTF-8"],
  ])("%s", (_, bytes, line) => {
    const { tree, lines } = reading(Uint8Array.from(bytes));
    expect(tree).toBeUndefined();
    expect(lines).toEqual([expect.stringContaining(line)]);
  });
});

describe("[FILE-1] depth and size", () => {
  test.each([
    ["[", "]"],
    ['{"a":', "}"],
  ])("64 levels of %s are read, 65 are not", (open, close) => {
    const nested = (depth: number) => open.repeat(depth) + "1" + close.repeat(depth);
    expect(reading(nested(64)).lines).toEqual([]);
    expect(reading(nested(65)).lines).toEqual([expect.stringContaining("JSON nested more than 64 levels deep")]);
  });

  test.each([10_000, 10_000_000])("%i levels are a sentence, not an overflow", (depth) => {
    expect(reading("[".repeat(depth)).lines).toHaveLength(1);
    expect(reading('[{"a":'.repeat(depth / 2)).lines).toHaveLength(1);
  });

  test("more than 64 MiB is refused by its size", () => {
    expect(reading(new Uint8Array(64 * 2 ** 20 + 1).fill(0x20)).lines).toEqual([
      "file: is larger than 64 MiB, the most that is read",
    ]);
  });

  test.each([
    ["blanks", " ", "file: is empty"],
    ["opened lists", "[0,", "nested more than 64"],
    ["one number", "1", "file: must be an object in braces, not 1111"],
    ["one text without an end", '"a', "not JSON"],
    ["line ends", "\n", "file: is empty"],
  ])("50 MB of %s end soon, in one line", (_, text, words) => {
    const taken = processorMs(() => {
      expect(faultsOf(text.repeat(Math.ceil((50 * 2 ** 20) / text.length)))).toEqual([expect.stringContaining(words)]);
    });
    expect(taken).toBeLessThan(10_000);
  });

  test("too many values are refused before they fill the memory", () => {
    expect(reading(`[${"0,".repeat(2_000_001)}0]`).lines).toEqual([
      "file: holds more than 2,000,000 JSON values, the most that is read",
    ]);
  });
});

/** What JSON.parse makes of a text: itself the judge of what is JSON. */
function parsed(text: string): { readonly value: unknown } | undefined {
  try {
    return { value: JSON.parse(text) as unknown };
  } catch {
    return undefined;
  }
}

// Mostly JSON: documents in which a few characters were added, taken away or changed.
const nearlyJson = fc
  .tuple(
    fc.json({ maxDepth: 4 }),
    fc.array(fc.tuple(fc.nat(), fc.constantFrom(...Array.from('{}[]",:0e.-+\\ut \n/é')), fc.nat(2))),
  )
  .map(([text, edits]) =>
    edits.reduce((edited, [at, character, kind]) => {
      const place = at % (edited.length + 1);
      return edited.slice(0, place) + (kind === 0 ? "" : character) + edited.slice(place + (kind === 1 ? 0 : 1));
    }, text),
  );

test("[FILE-1] what JSON.parse reads is read alike, keys that occur twice apart; what it refuses is refused", () => {
  fc.assert(
    fc.property(nearlyJson, (text) => {
      const [expected, { tree, lines }] = [parsed(text.toWellFormed()), reading(text.toWellFormed())];
      expect(tree !== undefined).toBe(expected !== undefined);
      if (lines.length === 0) expect(plain(tree)).toEqual(expected?.value);
    }),
    { numRuns: 3000 },
  );
});
