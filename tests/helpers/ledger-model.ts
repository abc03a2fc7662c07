/**
 * A second, naive ledger of quantities: a list of moves, added up day by day for every question. It says whether a
 * deed may be posted, and what stands afterwards, without a line of the ledger's own code.
 */
export interface ModelMove {
  /** As `late@shelf`. */
  readonly cell: string;
  readonly day: number;
  readonly quantity: bigint;
}

export interface LedgerModel {
  /** What stands in a cell at the end of a day; now, without one. */
  readonly stands: (cell: string, day?: number) => bigint;
  /** Whether nothing falls below zero on any day with these moves. */
  readonly allows: (moves: readonly ModelMove[]) => boolean;
  readonly keep: (key: string, moves: readonly ModelMove[]) => void;
  readonly movesOf: (key: string) => readonly ModelMove[];
  readonly keys: () => readonly string[];
  readonly cells: () => readonly string[];
}

export function ledgerModel(): LedgerModel {
  const movesByCell = new Map<string, ModelMove[]>();
  const movesByKey = new Map<string, readonly ModelMove[]>();
  const at = (cell: string): readonly ModelMove[] => movesByCell.get(cell) ?? [];
  const sumUpTo = (moves: readonly ModelMove[], day: number): bigint =>
    moves.reduce((sum, move) => (move.day <= day ? sum + move.quantity : sum), 0n);
  return {
    stands: (cell, day = Infinity) => sumUpTo(at(cell), day),
    allows: (moves) =>
      [...new Set(moves.map(({ cell }) => cell))].every((cell) => {
        const all = [...at(cell), ...moves.filter((move) => move.cell === cell)];
        return all.every(({ day }) => sumUpTo(all, day) >= 0n);
      }),
    keep: (key, moves) => {
      movesByKey.set(key, moves);
      for (const move of moves) {
        const known = movesByCell.get(move.cell);
        if (known) known.push(move);
        else movesByCell.set(move.cell, [move]);
      }
    },
    movesOf: (key) => movesByKey.get(key) ?? [],
    keys: () => [...movesByKey.keys()],
    cells: () => [...movesByCell.keys()],
  };
}
