import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { messageOf } from '../core/session/problem.ts';
import { problem } from '../page.ts';

/** A panel whose program is fetched when it is first shown, so that the bench itself opens sooner. */
export function later<P extends object>(load: () => Promise<ComponentType<P>>): ComponentType<P> {
  let loading: Promise<void> | null = null;
  let loaded: ComponentType<P> | null = null;
  return function Later(props: P) {
    const [, again] = useState(loaded !== null);
    useEffect(() => {
      if (loaded) return;
      let gone = false;
      loading ??= load().then((Panel) => {
        loaded = Panel;
      });
      loading.then(
        () => gone || again(true),
        (error: unknown) => {
          loading = null;
          problem.value = { code: 'unexpected', message: messageOf(error) };
        },
      );
      return () => {
        gone = true;
      };
    }, []);
    const Panel = loaded;
    return Panel ? <Panel {...props} /> : null;
  };
}
