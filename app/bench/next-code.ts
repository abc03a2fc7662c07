import "server-only";
import { cache } from "react";
import { planForPage } from "@/app/plan-for-page";
import { nextCode } from "@/lib/domain/bench/batch-code";
import { codesUsed } from "@/lib/domain/bench/codes";
import { readStruckOff } from "@/lib/store/ledger/ledger-answers";

/** The code that the next batch would have by the maker's scheme, or null without one. @rule BENCH-2 */
export const nextCodeForPage = cache(async (): Promise<string | null> => {
  const found = await planForPage();
  const scheme = found?.desk.batchCodeScheme ?? null;
  if (found === null || scheme === null) return null;
  const struckOff = (await readStruckOff()).map(({ lot }) => lot.id);
  return nextCode(scheme, found.today, [...codesUsed(found), ...struckOff]);
});
