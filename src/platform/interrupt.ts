const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
const undo = new Set<() => void>();

function runAll(): void {
  for (const action of [...undo].reverse()) {
    undo.delete(action);
    try {
      action();
    } catch {
      // One clean-up that fails must not keep the others from running.
    }
  }
}

function onSignal(signal: NodeJS.Signals): void {
  runAll();
  stopListening();
  // The signal ends the process as it would have without us, unless somebody else listens to it.
  if (process.listenerCount(signal) === 0) process.kill(process.pid, signal);
}

/** Cleans up as for an interruption, and lets the signal end the process, also one that is passed over otherwise. */
export function endBy(signal: NodeJS.Signals): void {
  runAll();
  stopListening();
  const none = () => {};
  // Taking a listener away leaves what the system does upon the signal.
  process.on(signal, none).off(signal, none);
  process.kill(process.pid, signal);
}

function listen(): void {
  for (const signal of signals) process.on(signal, onSignal);
  process.on('exit', runAll);
}

function stopListening(): void {
  for (const signal of signals) process.off(signal, onSignal);
  process.off('exit', runAll);
}

/**
 * Runs `action` (synchronous, last registered first) should the process be interrupted or exit before the returned
 * function is called. The returned function takes the registration back and does not run the action.
 */
export function onInterrupt(action: () => void): () => void {
  if (undo.size === 0) listen();
  undo.add(action);
  return () => {
    if (undo.delete(action) && undo.size === 0) stopListening();
  };
}
