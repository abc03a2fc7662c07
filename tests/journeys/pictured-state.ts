/** A page in a state, as a picture is taken of it. */
import type { Page } from "@playwright/test";
import type { Opened } from "./server";

export interface PicturedState {
  readonly name: string;
  readonly opened: Opened;
  readonly path: string;
  /** What is done on the page before the picture. */
  readonly act?: (page: Page) => Promise<void>;
  /** What it is printed on; A4 where nothing is said. */
  readonly paper?: "A4" | "Letter";
}
