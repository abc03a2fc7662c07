import type { ReactNode } from "react";

/** Each shape says its word without colour, in print too. Drawn on a square of fifteen. */
const SHAPES = {
  notch: (
    <>
      <path d="M1 13.5h13" />
      <path className="filled" d="M2.5 2h10l-5 8z" />
    </>
  ),
  pennant: (
    <>
      <path d="M1 13.5h13M3.5 2v11" />
      <path className="filled" d="M3.5 1.5h9l-9 7z" />
    </>
  ),
  box: <path d="M1.5 3.5h12v8h-12zM1.5 8 6 3.5M4 11.5l8-8M9 11.5 13.5 7" />,
  hourglass: <path d="M3 1.5h9M3 13.5h9M4 1.5c0 4 7 8 7 12M11 1.5c0 4-7 8-7 12" />,
  tally: <path d="M3 3v9M6 3v9M9 3v9M12 3v9M1.5 10.5l12-6" />,
  tick: <path d="M2 8l4 4.5L13 3" />,
  dash: <path d="M2 7.5h11" />,
  ring: <circle cx="7.5" cy="7.5" r="4.5" />,
  triangle: <path d="M7.5 2 14 13H1zM7.5 6v3.5M7.5 10.8v1" />,
} as const;

/** A drawing and a word. Wrong is in madder; open is what can be done; still is what is covered. */
export function Sign({
  sign,
  tone,
  children,
}: {
  readonly sign: keyof typeof SHAPES;
  readonly tone: "wrong" | "open" | "still";
  readonly children: ReactNode;
}): ReactNode {
  return (
    <span className={`sign ${tone}`}>
      <svg viewBox="0 0 15 15" aria-hidden="true">
        {SHAPES[sign]}
      </svg>
      <span>{children}</span>
    </span>
  );
}
