import { expect, test } from "vitest";
import { closeStore } from "@/lib/store/open-store";
import { killAgainAndAgain } from "../helpers/ledger-killing";
import { shop } from "../helpers/ledger-shop";
import { diceFrom } from "../helpers/random-dice";
import { openBooks } from "../helpers/store-desk";
import { storeForEachTest } from "../helpers/store-folder";

const { file } = storeForEachTest();

test("[LEDGER-3] killed at any instant while several clients post, it loses no acknowledged posting and leaves no half", async () => {
  await openBooks(shop());
  await closeStore(file());
  const { kills, acknowledged } = await killAgainAndAgain(file(), 5, diceFrom(7));
  expect(kills).toBe(5);
  expect(acknowledged).toBeGreaterThan(5);
});
