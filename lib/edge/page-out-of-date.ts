/** Said where a form came without what it carries unseen: a page of before the app was renewed, or one cut short. */
export const PAGE_OUT_OF_DATE = "This page is out of date, and nothing was changed. Load it again.";
