/** Pages that open without a network. What is kept of them is what a visitor who is not signed in gets. */
export const OFFLINE_PAGES = ['/bench', '/bench/sheet', '/safety'];
