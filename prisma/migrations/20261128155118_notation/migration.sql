-- How figures are written on the screens: one row, or none. Which locales there are is known in the app alone; one that
-- it does not know is read as its own default.
CREATE TABLE "notation" (
    "id" INTEGER NOT NULL PRIMARY KEY,
    "locale" TEXT NOT NULL,
    "units" TEXT NOT NULL,
    CONSTRAINT "notation_id" CHECK ("id" = 1),
    CONSTRAINT "notation_locale" CHECK (typeof("locale") = 'text' AND length("locale") BETWEEN 2 AND 20),
    CONSTRAINT "notation_units" CHECK ("units" IN ('metric', 'US'))
);
