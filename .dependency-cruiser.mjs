// The doors of the house: who may ask whom. The rooms are folders, so each rule is anchored on one.
// tests/architecture/doors.test.ts runs these, and shows for every one of them an import that it catches.

/** The files of a room, or of several. */
const from = (path, pathNot) => (pathNot ? { path, pathNot } : { path });

const ROOMS = "^(app|lib|tests)/";
const PRISMA_AND_SQL = "(^|/)node_modules/(@prisma/|\\.prisma/|better-sqlite3/)|^lib/store/generated/";
const SCREEN = "(^|/)node_modules/(next|react|react-dom|recharts)/";
const PARTS = "^app/_ui/|^app/.*\\b_parts/";
// Writes migrations from the schema, on a developer's machine only.
const MIGRATION_WRITER = "^lib/commands/migrations\\.ts$";
const ACTIONS = "^app/.*\\bactions\\.ts$";
// A basket is searched for in a thread of its own, which only an operation may start; nothing of it is written.
const BASKET_READER = "^app/buying/buying-for-page\\.ts$";

/** @type {{ name: string, comment: string, from: object, to: object }[]} */
const doors = [
  {
    name: "domain-asks-nobody",
    comment:
      "lib/domain holds the trade's rules as plain functions of plain data. What it needs from outside comes in as an " +
      "argument; a page, the store or a command calls it, never the other way round.",
    from: from("^lib/domain/"),
    to: { pathNot: "^lib/domain/|(^|/)node_modules/dinero\\.js/" },
  },
  {
    name: "dinero-in-money-alone",
    comment:
      "Amounts of money are added, allocated and formatted in lib/domain/money.ts alone, so that there is one place " +
      "where they can round. Call that.",
    from: from(ROOMS, "^lib/domain/money\\.ts$|^tests/"),
    to: { path: "(^|/)node_modules/dinero\\.js/" },
  },
  {
    name: "edge-asks-domain",
    comment:
      "lib/edge turns text into domain values and back. It keeps no state, so it has nothing to ask of the store, of an " +
      "operation, of a command or of a screen.",
    from: from("^lib/edge/"),
    to: { path: `^(app|lib/(store|operations|commands|solver))/|${SCREEN}` },
  },
  {
    name: "store-asks-domain",
    comment:
      "lib/store keeps domain values in rows and gives them back. Text that a person typed is read in lib/edge before " +
      "it comes here, and what is decided is decided in lib/operations.",
    from: from("^lib/store/"),
    to: { path: `^(app|lib/(edge|operations|commands|solver))/|${SCREEN}` },
  },
  {
    name: "prisma-in-store-alone",
    comment:
      "Only lib/store speaks Prisma and SQL. Rows that spread through other rooms cannot be taken back; ask the store " +
      "for domain values. (The writer of migrations speaks to Prisma's engine; it never opens a maker's store.)",
    from: from("^(app|lib)/|^[^/]+\\.tsx?$", `^lib/store/|^prisma\\.config\\.ts$|${MIGRATION_WRITER}`),
    to: { path: PRISMA_AND_SQL },
  },
  {
    name: "solver-asks-domain",
    comment:
      "lib/solver takes a problem in plain data and gives an answer in plain data. It knows neither where the problem " +
      "came from nor who wants the answer.",
    from: from("^lib/solver/"),
    to: { path: `^(app|lib/(edge|store|operations|commands))/|${SCREEN}` },
  },
  {
    name: "highs-in-solver-alone",
    comment:
      "Only lib/solver speaks to the solver, in a thread of its own: a solve blocks the thread that it runs in, and what " +
      "it answers is a proposal that lib/domain has to check. Ask lib/solver, through an operation.",
    from: from("^(app|lib)/|^[^/]+\\.tsx?$", "^lib/solver/"),
    to: { path: "(^|/)node_modules/highs/" },
  },
  {
    name: "operations-ask-store-and-domain",
    comment:
      "An operation loads, decides and saves in one transaction. What was typed is parsed before it is called, and what " +
      "is shown is worked out after it.",
    from: from("^lib/operations/"),
    to: { path: `^(app|lib/(edge|commands))/|${SCREEN}` },
  },
  {
    name: "lib-does-not-know-the-app",
    comment: "lib works the same without a screen: the report, the tests and the app stand on it alike.",
    from: from("^lib/"),
    to: { path: "^app/" },
  },
  {
    name: "commands-ask-no-solver",
    comment: "A command asks an operation for a basket, as the app does, so that both choose it in the same way.",
    from: from("^lib/commands/"),
    to: { path: "^lib/solver/" },
  },
  {
    name: "commands-are-the-end-of-a-line",
    comment: "A command is called from a terminal. What two callers need belongs in the room that both may ask.",
    from: from("^(app|lib)/", "^lib/commands/"),
    to: { path: "^lib/commands/" },
  },
  {
    name: "pages-only-read",
    comment:
      "A page asks the store, reckons with the domain and shows. A write goes through a form to the actions of its " +
      "place, because load, decide and save must share a transaction. (A basket is only read, but searched for in a " +
      "thread that an operation starts: one file of its place asks for it.)",
    from: from("^app/", `${ACTIONS}|${BASKET_READER}`),
    to: { path: "^lib/(operations|solver)/" },
  },
  {
    name: "actions-parse-and-hand-on",
    comment:
      "An action parses with lib/edge, calls one operation and revalidates. If it needs the store or the domain, the " +
      "decision belongs in the operation.",
    from: from(ACTIONS),
    to: { path: "^lib/(store|solver|domain)/" },
  },
  {
    name: "parts-take-values",
    comment:
      "_parts and _ui take values and return markup, so that they can be shown anywhere and tested with plain data. " +
      "The page asks the store and hands down what they show.",
    from: from(PARTS),
    to: { path: "^lib/(store|solver)/" },
  },
  {
    name: "ui-knows-no-place",
    comment:
      "app/_ui is the small set of components that every place shares; a component that knows a place lives there.",
    from: from("^app/_ui/"),
    to: { path: "^app/(?!_ui/)" },
  },
  {
    name: "places-do-not-share-parts",
    comment: "The parts of one place are its own. What two places need goes to app/_ui or lib/edge.",
    from: from("^app/([a-z][^/]*)/"),
    to: { path: "^app/.*\\b_parts/", pathNot: "^app/$1/" },
  },
  {
    name: "no-tests-in-the-house",
    comment: "What the app needs does not live among its tests.",
    from: from("^(app|lib)/|^[^/]+\\.tsx?$", "^(playwright|vitest)\\.config\\.ts$"),
    to: { path: "^tests/" },
  },
  {
    name: "no-development-packages",
    comment:
      "The app must run after an install without development packages. Move the package to dependencies, or do without.",
    from: from("^(app|lib)/", MIGRATION_WRITER),
    to: { dependencyTypes: ["npm-dev"], dependencyTypesNot: ["type-only"] },
  },
  {
    name: "no-circles",
    comment: "Two files that need each other are one file, or hide a third that both should ask.",
    from: {},
    to: { circular: true },
  },
  {
    name: "every-import-is-found",
    comment: "An import that cannot be followed passes every other door unseen.",
    from: {},
    to: { couldNotResolve: true },
  },
];

/** @type {import("dependency-cruiser").IConfiguration} */
export default {
  forbidden: doors.map((door) => ({ ...door, severity: "error" })),
  options: {
    doNotFollow: { path: "node_modules|^lib/store/generated/" },
    // Types count as well: a screen that knows a row's type is tied to the table.
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "node", "default", "types"],
      mainFields: ["module", "main", "types"],
    },
  },
};
