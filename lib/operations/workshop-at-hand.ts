import { readWorkshop } from "@/lib/store/books";

/**
 * The workshop that a form is read by: its materials, offers and currency. What is posted is decided on the books as
 * they are by then. Null where none is open.
 */
export const workshopAtHand = () => readWorkshop();
