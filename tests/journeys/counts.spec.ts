/** What the ledger is worth when the app does not end as it should. */
import { expect, test } from "@playwright/test";
import { runScript } from "./server";

const PATIENCE_MS = 600_000;

test("[LEDGER-3] kills of the running app lose no posting that was told of, and leave none twice or in part", () => {
  test.setTimeout(PATIENCE_MS);
  const said = runScript("soak", ["kills", "3"], process.env);
  expect(said).toMatch(
    /^3 kills of the server, [1-9]\d* postings acknowledged, each there once, .*, 0 disagreements$/m,
  );
});

test("[BENCH-5] cuts and kills while two devices weigh lose no note and double none", () => {
  test.setTimeout(PATIENCE_MS);
  const said = runScript("soak", ["weighing", "3"], process.env);
  expect(said).toMatch(
    /^3 kills of the server and \d+ cuts .*: [1-9]\d* notes .* each there once, .*, 0 disagreements$/m,
  );
});
