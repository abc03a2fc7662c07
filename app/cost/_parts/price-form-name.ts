/** The name of the form that sets the prices: buttons that stand elsewhere on the page send it too. */
export const PRICE_FORM = "set-prices";
