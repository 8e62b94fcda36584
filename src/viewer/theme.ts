/** Makes the button work that changes between light and dark; where nobody presses it, the system decides. */
export function themeButton(): void {
  const button = document.querySelector<HTMLButtonElement>('#theme');
  if (button === null) return;
  const root = document.documentElement;
  const isDark = (): boolean =>
    root.dataset['theme'] === undefined
      ? matchMedia('(prefers-color-scheme: dark)').matches
      : root.dataset['theme'] === 'dark';
  const name = (): void => {
    button.textContent = isDark() ? 'Light page' : 'Dark page';
  };
  button.hidden = false;
  button.addEventListener('click', () => {
    root.dataset['theme'] = isDark() ? 'light' : 'dark';
    name();
  });
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', name);
  name();
}
