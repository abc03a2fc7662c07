/** What is common practice, no source, where the law of the market does not ask for it. @rule LABEL-8 */
import { asksForBatch } from "./asked-by-market";
import type { LabelDraft } from "./label-draft";

export function labelNotes(draft: LabelDraft): readonly string[] {
  const { ph, made, batchCode, use, net, ingredients, market } = draft;
  return [
    ...(ph === null ? ["Print the pH on the label, or keep it with the batch."] : []),
    ...(made === null ? ["Print the day on which it was made."] : []),
    ...(batchCode === null && !asksForBatch(market) ? ["A label without a batch code cannot be called back."] : []),
    ...(use === "rinse-off" ? ["What is used in the shower does not go into glass."] : []),
    ...(net.by === "volume" ? ["A thin product goes into a bottle with a pump."] : []),
    ...(ingredients.notNamed.length > 0
      ? ["Keep a list of every allergen, also of those that are too little to be named."]
      : []),
  ];
}
