// Runs in the report's page: puts the solids in place of the still picture, and turns them.
import { byKey, FROM_ABOVE, orbitWords, START, turned, zoomed, type Orbit } from './orbit.ts';
import { readScenes } from './scene.ts';
import { stageOn } from './solids.ts';
import { themeButton } from './theme.ts';

const DEG_PER_PIXEL = 0.4;

function start(): void {
  const view = document.querySelector<HTMLElement>('#view');
  const data = document.querySelector('#scenes');
  const canvas = view?.querySelector('canvas');
  if (!view || !canvas || data?.textContent == null) return;
  const placings = readScenes(data.textContent);
  const said = view.querySelector('[data-said]');
  const hidden = new Set<string>();
  let orbit: Orbit = START;
  let placing = 0;
  view.classList.add('live');
  let stage;
  try {
    stage = stageOn(canvas, placings);
  } catch {
    // No solids can be drawn here: the still pictures stay.
    view.classList.remove('live');
    return;
  }
  const { show, draw } = stage;
  let isWaiting = false;
  const redraw = (): void => {
    canvas.dataset['turn'] = orbit.turnDeg.toFixed(1);
    canvas.dataset['above'] = orbit.aboveDeg.toFixed(1);
    canvas.dataset['zoom'] = orbit.zoom.toFixed(2);
    canvas.dataset['placing'] = String(placing);
    if (said !== null) said.textContent = `${placings[placing]!.title}, seen ${orbitWords(orbit)}`;
    if (isWaiting) return;
    isWaiting = true;
    requestAnimationFrame(() => {
      isWaiting = false;
      draw(orbit);
    });
  };
  const go = (to: Orbit): void => {
    orbit = to;
    redraw();
  };
  const place = (k: number): void => {
    if (placings[k] === undefined) return;
    placing = k;
    show(placing, hidden);
    for (const button of view.querySelectorAll('[data-placing]'))
      button.setAttribute(
        'aria-pressed',
        String(button.getAttribute('data-placing') === String(k)),
      );
    redraw();
  };
  const does: Readonly<Record<string, () => void>> = {
    left: () => {
      go(turned(orbit, -15, 0));
    },
    right: () => {
      go(turned(orbit, 15, 0));
    },
    closer: () => {
      go(zoomed(orbit, 1.25));
    },
    away: () => {
      go(zoomed(orbit, 0.8));
    },
    above: () => {
      go(FROM_ABOVE);
    },
    again: () => {
      go(START);
    },
  };
  view.addEventListener('click', ({ target }) => {
    const button = (target as Element).closest('button');
    if (button === null) return;
    if (button.dataset['placing'] !== undefined) place(Number(button.dataset['placing']));
    else does[button.dataset['do'] ?? '']?.();
  });
  view.addEventListener('change', ({ target }) => {
    const box = target as HTMLInputElement;
    const kind = box.dataset['kind'];
    if (kind === undefined) return;
    if (box.checked) hidden.delete(kind);
    else hidden.add(kind);
    show(placing, hidden);
    redraw();
  });
  canvas.addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === '1' || event.key === '2') place(Number(event.key) - 1);
    else {
      const to = byKey(orbit, event.key);
      if (to === null) return;
      go(to);
    }
    event.preventDefault();
  });
  byPointer(canvas, () => orbit, go);
  new ResizeObserver(redraw).observe(canvas);
  place(0);
}

/** One pointer turns, two pinch; a wheel zooms while the view has the focus, so that it never traps a page. */
function byPointer(canvas: HTMLCanvasElement, now: () => Orbit, go: (to: Orbit) => void): void {
  const down = new Map<number, { x: number; y: number }>();
  canvas.addEventListener('pointerdown', (event) => {
    canvas.setPointerCapture(event.pointerId);
    down.set(event.pointerId, { x: event.clientX, y: event.clientY });
  });
  const up = (event: PointerEvent): void => void down.delete(event.pointerId);
  canvas.addEventListener('pointerup', up);
  canvas.addEventListener('pointercancel', up);
  canvas.addEventListener('pointermove', (event) => {
    const before = down.get(event.pointerId);
    if (before === undefined) return;
    const after = { x: event.clientX, y: event.clientY };
    const other = [...down].find(([id]) => id !== event.pointerId)?.[1];
    down.set(event.pointerId, after);
    if (other === undefined) {
      go(turned(now(), (before.x - after.x) * DEG_PER_PIXEL, (after.y - before.y) * DEG_PER_PIXEL));
      return;
    }
    const apart = (a: { x: number; y: number }): number =>
      Math.hypot(a.x - other.x, a.y - other.y) || 1;
    go(zoomed(now(), apart(after) / apart(before)));
  });
  canvas.addEventListener(
    'wheel',
    (event) => {
      if (document.activeElement !== canvas) return;
      event.preventDefault();
      go(zoomed(now(), Math.exp(-event.deltaY / 500)));
    },
    { passive: false },
  );
}

themeButton();
start();
