import {
  type ComponentType,
  lazy,
  type ReactNode,
  Suspense,
  startTransition,
  useEffect,
  useRef,
  useState,
} from 'react';
import { useMessages } from '../messages/messages.ts';
import { addressOf, goTo, type LayoutRoute } from '../route.ts';
import { LayoutProvider, useOpenLayout } from '../state/layoutContext.ts';
import type { OpenLayoutStore } from '../state/openLayout.ts';
import { useWorld } from '../world.ts';
import { CardScreen } from './card/cardScreen.tsx';
import { LayoutHead } from './layoutHead.tsx';
import { PapersScreen } from './papers/papersScreen.tsx';

/* Nobody begins at these: each is loaded when it is turned to. */
const TrimmingScreen = lazy(async () => ({
  default: (await import('./trimming/trimmingScreen.tsx')).TrimmingScreen,
}));
const BenchScreen = lazy(async () => ({ default: (await import('./bench/benchScreen.tsx')).BenchScreen }));
const GuideScreen = lazy(async () => ({ default: (await import('./guide/guideScreen.tsx')).GuideScreen }));

const screenOf = {
  card: CardScreen,
  papers: PapersScreen,
  trimming: TrimmingScreen,
  bench: BenchScreen,
  guide: GuideScreen,
} as const satisfies Record<LayoutRoute['screen'], ComponentType>;

/** A layout from the shelf, open at one of its screens. */
export function LayoutScreen({ route }: { readonly route: LayoutRoute }): ReactNode {
  const { general } = useMessages();
  const store = useLayoutOf(route.id);
  if (store === 'taking') return <p>{general.loading}</p>;
  if (store === 'not there') return <NotThere says={general.notThere} />;
  const Screen = screenOf[route.screen];
  return (
    <LayoutProvider value={store}>
      <FollowsSecondVersion screen={route.screen} />
      <LayoutHead screen={route.screen} />
      <Suspense>
        <Screen />
      </Suspense>
    </LayoutProvider>
  );
}

/** What cannot be shown, and the way back. */
export function NotThere({
  says,
  children,
}: {
  readonly says: string;
  readonly children?: ReactNode;
}): ReactNode {
  const { general } = useMessages();
  return (
    <>
      <h1>{says}</h1>
      {children}
      <p>
        <a href={addressOf({ screen: 'shelf' })}>{general.toShelf}</a>
      </p>
    </>
  );
}

/** What was found on the shelf where a layout was asked for; `null`: there is none of that id. */
interface Found {
  readonly asked: string;
  readonly store: OpenLayoutStore | null;
}

/** Takes a layout from the shelf, and lays it away when the page leaves it or goes on to another. */
function useLayoutOf(id: string): OpenLayoutStore | 'taking' | 'not there' {
  const { desk } = useWorld();
  const [found, setFound] = useState<Found | null>(null);
  const open = useRef<OpenLayoutStore | null>(null);
  useEffect(() => {
    // It may have become a second version of that id.
    if (open.current?.getState().id === id) {
      setFound({ asked: id, store: open.current });
      return;
    }
    let left = false;
    void desk.open(id).then((store) => {
      if (left) return;
      if (open.current !== null) desk.layAway(open.current);
      open.current = store;
      startTransition(() => setFound({ asked: id, store }));
    });
    return () => {
      left = true;
    };
  }, [id, desk]);
  useEffect(
    () => () => {
      if (open.current !== null) desk.layAway(open.current);
      open.current = null;
    },
    [desk],
  );
  // The one before is there no more as soon as another is asked for.
  if (found === null || (found.asked !== id && found.store?.getState().id !== id)) return 'taking';
  return found.store ?? 'not there';
}

/** The address is that of the second version once the layout has become one. */
function FollowsSecondVersion({ screen }: { readonly screen: LayoutRoute['screen'] }): null {
  const id = useOpenLayout((state) => state.id);
  useEffect(() => goTo({ screen, id }, { instead: true }), [screen, id]);
  return null;
}
