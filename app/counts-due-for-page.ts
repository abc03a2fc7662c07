import "server-only";
import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { countDue, type CountDue } from "@/lib/domain/ledger/counts-due";
import { readSinceCounted } from "@/lib/store/ledger/ledger-answers";

/** How each material that is counted by a rhythm stands, in the workshop's order. @rule LEDGER-25 */
export async function countsDue({ workshop, desk }: Books, today: Day): Promise<readonly CountDue[]> {
  const { countRhythms } = desk;
  if (countRhythms.length === 0) return [];
  const since = await readSinceCounted(countRhythms.map(({ material }) => material));
  const rhythms = new Map(countRhythms.map((rhythm) => [rhythm.material, rhythm]));
  return workshop.materials.flatMap(({ id }) => {
    const rhythm = rhythms.get(id);
    return rhythm === undefined
      ? []
      : countDue(rhythm, since.get(id) ?? { countedOn: null, since: null, draws: 0 }, today);
  });
}
