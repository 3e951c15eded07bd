// The page is made on the server and needs no script of the kit; enhance.js is its only one.
export const csr = false;
