/**
 * Single keys that go to a place, once the maker has turned them on: the first letter of its name that is free. Letters
 * alone, since other signs want Shift or a third level on some keyboards.
 */
export const SINGLE_KEYS = [
  { key: "f", goes: "/find", words: "Find" },
  { key: "t", goes: "/", words: "Today" },
  { key: "c", goes: "/cost", words: "Cost" },
  { key: "w", goes: "/week", words: "Week" },
  { key: "s", goes: "/shelf", words: "Shelf" },
  { key: "b", goes: "/buying", words: "Buying" },
  { key: "n", goes: "/bench", words: "Bench" },
  { key: "k", goes: "/book", words: "Book" },
  { key: "r", goes: "/shelf/receive", words: "Receive a delivery" },
] as const;
