import { expect, test } from "vitest";
import { makingIn } from "@/lib/domain/ledger/making";
import { at, batchOf, finishedLot, materialLot, moving, NO_VALUE, ofMaterials } from "@/lib/domain/ledger/posting";
import { money } from "../../helpers/notation";

test("[LEDGER-12] a making tells its draws, what it cost, and what became of it", () => {
  const [oil, units, batch] = [materialLot("oil"), finishedLot("F"), batchOf("r")];
  const labour = { ...NO_VALUE, labour: money("6") };
  const whole = { ...ofMaterials(money("18")), labour: money("5.4") };
  const lost = { ...ofMaterials(money("2")), labour: money("0.6") };
  const making = makingIn({
    entries: [
      ...moving(oil, 1000n, ofMaterials(money("20")), at("shelf"), batch),
      ...moving(oil, 10n, ofMaterials(money("0.2")), at("shelf"), at("lost")),
      ...moving(oil, 40n, NO_VALUE, batch, at("lost")),
      ...moving(units, 0n, labour, at("labour"), batch),
      ...moving(units, 9n, whole, batch, at("finished")),
      ...moving(units, 1n, lost, batch, at("lost")),
    ],
  });
  expect(making).toEqual({
    draws: [{ lot: "oil", quantity: 1000n, value: ofMaterials(money("20")) }],
    spilt: [{ lot: "oil", quantity: 10n, value: ofMaterials(money("0.2")) }],
    cost: { ...ofMaterials(money("20")), labour: money("6") },
    lot: units,
    units: 9n,
    finished: whole,
    missing: 1n,
    lost,
  });
});

test("[LEDGER-12] of a batch that failed there are no units, and all it cost is lost", () => {
  const [oil, units, batch] = [materialLot("oil"), finishedLot("F"), batchOf("r")];
  const cost = ofMaterials(money("20"));
  const entries = [...moving(oil, 1000n, cost, at("shelf"), batch), ...moving(units, 10n, cost, batch, at("lost"))];
  expect(makingIn({ entries })).toMatchObject({ units: 0n, finished: NO_VALUE, missing: 10n, lost: cost, cost });
});
