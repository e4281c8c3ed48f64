/**
 * Lets the page open without a network where it was served securely: the build names a manifest only in pages that have a service worker beside them,
 * so neither the single file nor the page under development asks for one; a school's lab serves its page anew each time.
 */
export function keepOffline(): void {
  const built = document.querySelector('link[rel="manifest"]') !== null;
  const inLab = document.querySelector('meta[name="toehold-lab"]') !== null;
  if (!built || inLab || !window.isSecureContext) return;
  const register = (): void => {
    // Without room for it the page works as before, with a network.
    navigator.serviceWorker?.register('./sw.js').catch(() => undefined);
  };
  if (document.readyState === 'complete') register();
  else window.addEventListener('load', register, { once: true });
}
