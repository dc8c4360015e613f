/** The little of Trusted Types that is used here; browsers that lack them do without. */
interface TrustedTypes {
  createPolicy(
    name: string,
    rules: { createScriptURL(address: string): string },
  ): { createScriptURL(address: string): unknown };
}

const policy = (globalThis as { trustedTypes?: TrustedTypes }).trustedTypes?.createPolicy('cardwright', {
  createScriptURL(address) {
    // The page starts no script but its own.
    if (new URL(address, document.baseURI).origin === new URL(document.baseURI).origin) return address;
    throw new TypeError(`${address} is no script of this page`);
  },
});

/** The address of a worker of the page, as its policy for scripts lets it be started. */
export function scriptAddress(address: string): URL {
  return (policy?.createScriptURL(address) ?? address) as URL;
}
