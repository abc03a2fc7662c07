/**
 * How wide letters are in Source Sans 3, thousandths of the type size: measured in a browser from the font that the app
 * serves, without kerning. Labels are laid out by them on the server.
 */
const PRINTABLE = letters(32, 126);
const LATIN = letters(160, 255);
const FURTHER = ["–", "—", "‘", "’", "“", "”", "…", "•", "€", "™"];

/** A letter that is not in the table is taken as wide as a capital M. */
const UNKNOWN = 850;

const REGULAR = widthsOf(
  "200 289 426 497 497 824 609 249 303 303 418 497 249 311 249 350 497 497 497 497 497 497 497 497 497 497 249 " +
    "249 497 497 497 425 847 543 588 571 615 527 494 617 652 263 479 579 486 727 647 664 566 664 569 534 536 645 " +
    "515 786 513 476 539 303 350 303 497 500 542 504 553 456 555 496 292 504 544 246 247 495 255 829 547 542 555 " +
    "555 347 419 338 544 467 719 446 467 425 303 241 303 497",
  "200 289 497 497 497 497 241 497 542 744 345 429 497 0 423 542 331 497 367 367 542 562 560 249 542 367 365 " +
    "429 781 808 796 425 544 544 544 544 544 544 822 571 527 527 527 527 263 263 263 263 639 647 664 664 664 664 " +
    "664 497 664 645 645 645 645 476 583 576 504 504 504 504 504 504 778 456 496 496 496 496 246 246 246 246 544 " +
    "547 542 542 542 542 542 497 542 544 544 544 544 467 555 467",
  "480 800 249 249 426 426 948 304 497 637",
);
const BOLD = widthsOf(
  "200 315 482 513 513 841 639 275 324 324 438 513 275 322 275 344 513 513 513 513 513 513 513 513 513 513 275 " +
    "275 513 513 513 444 875 558 597 576 625 538 510 628 663 282 494 597 502 745 657 674 582 674 592 545 546 655 " +
    "536 800 541 501 540 324 344 324 513 500 549 516 563 462 564 507 317 520 558 262 263 522 271 843 560 549 564 " +
    "564 373 431 361 556 495 748 481 495 443 324 255 324 513",
  "200 315 513 513 513 513 255 513 549 747 352 455 513 0 443 549 348 513 372 372 549 578 599 275 549 372 369 " +
    "455 795 827 807 444 558 558 558 558 558 558 834 576 538 538 538 538 282 282 282 282 651 656 674 674 674 674 " +
    "674 513 674 655 655 655 655 501 600 604 516 516 516 516 516 516 780 462 507 507 507 507 262 262 262 262 552 " +
    "560 549 549 549 549 549 513 549 556 556 556 556 495 564 495",
  "480 800 275 275 482 482 964 325 513 660",
);

/** The width of a text set in so many millimetres, mm. */
export function widthOf(text: string, size: number, isBold: boolean): number {
  const widths = isBold ? BOLD : REGULAR;
  const thousandths = [...text].reduce((sum, letter) => sum + (widths.get(letter) ?? UNKNOWN), 0);
  return (thousandths * size) / 1000;
}

function letters(from: number, to: number): readonly string[] {
  return Array.from({ length: to - from + 1 }, (_, at) => String.fromCharCode(from + at));
}

function widthsOf(printable: string, latin: string, further: string): ReadonlyMap<string, number> {
  const pairs = ([printable, latin, further] as const).flatMap((text, at) => {
    const of = [PRINTABLE, LATIN, FURTHER][at] ?? [];
    return text.split(" ").map((width, place) => [of[place] ?? "", Number(width)] as const);
  });
  return new Map(pairs);
}
