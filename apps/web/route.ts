import { startTransition, useEffect, useState } from 'react';

/** The screens in the order of the contents line; a screen's folio number is its place in it. */
export const screens = ['shelf', 'card', 'papers', 'trimming', 'bench', 'guide'] as const;

export type Screen = (typeof screens)[number];

/** Where in the booklet the page is open; the shelf belongs to no layout. A kit is a booklet of its own beside the shelf. */
export type Route =
  | { readonly screen: 'shelf' }
  | { readonly screen: 'kit'; readonly id: string }
  | LayoutRoute;

/** A screen of a layout. */
export interface LayoutRoute {
  readonly screen: Exclude<Screen, 'shelf'>;
  readonly id: string;
}

/** The part of the address that leads to a screen. It stands behind a `#`, so any host can serve the page. */
export function addressOf(route: Route): string {
  if (route.screen === 'kit') return `#/kit/${encodeURIComponent(route.id)}`;
  return route.screen === 'shelf' ? '#/' : `#/${encodeURIComponent(route.id)}/${route.screen}`;
}

/** The screen an address leads to; the shelf where it leads nowhere. */
export function routeOf(hash: string): Route {
  const kit = /^#\/kit\/([^/]+)$/u.exec(hash)?.[1];
  if (kit !== undefined) return decoded({ screen: 'kit', id: kit });
  const [, id, screen] = /^#\/([^/]+)\/([a-z]+)$/u.exec(hash) ?? [];
  const known = screens.find((each) => each === screen);
  if (id === undefined || known === undefined || known === 'shelf') return { screen: 'shelf' };
  return decoded({ screen: known, id });
}

function decoded(route: Exclude<Route, { screen: 'shelf' }>): Route {
  try {
    return { ...route, id: decodeURIComponent(route.id) };
  } catch {
    return { screen: 'shelf' };
  }
}

/** Goes to a screen; `instead` leaves no way back to the present one. */
export function goTo(route: Route, { instead = false } = {}): void {
  const address = addressOf(route);
  if (instead) {
    window.history.replaceState(null, '', address);
    window.dispatchEvent(new HashChangeEvent('hashchange'));
  } else window.location.hash = address;
}

/** Where the page is open, kept up to date. */
export function useRoute(): Route {
  const [hash, setHash] = useState(() => window.location.hash);
  useEffect(() => {
    // A screen is much to draw: it is drawn bit by bit, and the one before is there until it is done.
    const changed = () => startTransition(() => setHash(window.location.hash));
    // It may have changed before anything listened.
    changed();
    window.addEventListener('hashchange', changed);
    return () => window.removeEventListener('hashchange', changed);
  }, []);
  return routeOf(hash);
}
