import { lazy, type ReactNode, Suspense, useEffect, useRef } from 'react';
import { Caught } from './caught.tsx';
import { DropProvider } from './dropped.tsx';
import { GroundChoice } from './ground.tsx';
import { useMessages } from './messages/messages.ts';
import { addressOf, type Route, screens, useRoute } from './route.ts';
import { ShelfScreen } from './screens/shelf/shelfScreen.tsx';

const layoutScreen = () => import('./screens/layoutScreen.tsx');
const KitScreen = lazy(async () => ({ default: (await import('./screens/kit/kitScreen.tsx')).KitScreen }));
const LayoutScreen = lazy(async () => ({ default: (await layoutScreen()).LayoutScreen }));

/** The whole page: the contents line, the screen it is open at, the folio number at its foot. */
export function App(): ReactNode {
  const route = useRoute();
  const { general } = useMessages();
  useFocusOnNewScreen(route);
  useEffect(() => {
    // At once, not when a layout is opened: by then the page may be offline, or another version may stand on the host.
    void layoutScreen().catch(() => {});
  }, []);
  return (
    <DropProvider>
      <button type="button" className="skip say" onClick={() => focusOn('page-itself')}>
        {general.skip}
      </button>
      <Contents route={route} />
      <main id="page-itself" data-screen={route.screen} tabIndex={-1}>
        {/* What went wrong on one screen is over on the next. */}
        <Caught at={addressOf(route)}>
          <Suspense fallback={<p>{general.loading}</p>}>
            {route.screen === 'shelf' ? (
              <ShelfScreen />
            ) : route.screen === 'kit' ? (
              <KitScreen key={route.id} id={route.id} />
            ) : (
              <LayoutScreen route={route} />
            )}
          </Suspense>
        </Caught>
      </main>
      <footer className="foot">
        <p className="folio">{folioOf(route.screen)}</p>
        <p className="colophon">{general.colophon}</p>
        <GroundChoice />
      </footer>
    </DropProvider>
  );
}

/** The folio number of a screen; a kit follows the shelf. */
function folioOf(screen: Route['screen']): number {
  return screen === 'kit' ? 2 : screens.indexOf(screen) + 1;
}

/** The contents of a booklet in one line: what there is, and its folio number. */
function Contents({ route }: { readonly route: Route }): ReactNode {
  const { general } = useMessages();
  return (
    <nav className="contents" aria-label={general.contents}>
      <ol>
        {(route.screen === 'kit' ? kitContents : screens).map((screen) => {
          const to = screen === 'shelf' ? { screen } : 'id' in route ? { screen, id: route.id } : null;
          // With no layout open there is nothing yet on the other pages.
          if (to === null) return null;
          return (
            <li key={screen}>
              <a href={addressOf(to)} aria-current={screen === route.screen ? 'page' : undefined}>
                <span>{general.screens[screen]}</span> <span className="leader" aria-hidden="true" />{' '}
                <span className="folio-number">{folioOf(screen)}</span>
              </a>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}

/** What there is of a kit. */
const kitContents = ['shelf', 'kit'] as const;

/** The hash of the address leads to screens, so the way past the contents is no link. */
function focusOn(id: string): void {
  document.getElementById(id)?.focus();
}

/** Who listens hears the heading of a screen when it is turned to. */
function useFocusOnNewScreen(route: Route): void {
  const before = useRef(route.screen);
  useEffect(() => {
    if (before.current === route.screen) return;
    before.current = route.screen;
    window.scrollTo(0, 0);
    focusOn('page-itself');
  }, [route.screen]);
}
