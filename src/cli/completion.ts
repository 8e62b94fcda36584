/** What a shell needs to know of the verbs. */
export interface Verb {
  readonly name: string;
  readonly about: string;
  readonly options: readonly { readonly flag: string; readonly about: string }[];
  /** Words that may follow, such as the keys of `explain`. */
  readonly words: readonly string[];
}

export const SHELLS = ['bash', 'zsh', 'fish', 'powershell'] as const;
export type Shell = (typeof SHELLS)[number];

/** A script that the shell reads to complete verbs, options, words and file names. */
export function completionScript(shell: Shell, program: string, verbs: readonly Verb[]): string {
  switch (shell) {
    case 'bash':
      return bash(program, verbs);
    case 'zsh':
      return zsh(program, verbs);
    case 'fish':
      return fish(program, verbs);
    case 'powershell':
      return powershell(program, verbs);
  }
}

/** How to have it read at each start of the shell; for `--help`. */
export const HOW_TO_LOAD: Readonly<Record<Shell, string>> = {
  bash: 'flipwright completion bash > ~/.local/share/bash-completion/completions/flipwright',
  zsh: 'flipwright completion zsh > a folder of your $fpath, as the file _flipwright',
  fish: 'flipwright completion fish > ~/.config/fish/completions/flipwright.fish',
  powershell: 'flipwright completion powershell >> $PROFILE',
};

const wordsOf = ({ options, words }: Verb): string =>
  [...words, ...options.map(({ flag }) => flag)].join(' ');

const bash = (program: string, verbs: readonly Verb[]): string => `# ${program}: completion for bash
_${program}() {
  local word="\${COMP_WORDS[COMP_CWORD]}"
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W '${verbs.map(({ name }) => name).join(' ')} help --help --version' -- "$word"))
    return
  fi
  local words=
  case "\${COMP_WORDS[1]}" in
${verbs.map((verb) => `    ${verb.name}) words='${wordsOf(verb)}' ;;`).join('\n')}
  esac
  COMPREPLY=($(compgen -W "$words" -- "$word") $(compgen -f -- "$word"))
}
complete -o filenames -F _${program} ${program}
`;

/** In single quotes of a POSIX shell. */
const quoted = (text: string): string => `'${text.replaceAll("'", `'\\''`)}'`;

const zsh = (program: string, verbs: readonly Verb[]): string => `#compdef ${program}
# ${program}: completion for zsh
_${program}() {
  local -a verbs
  verbs=(
${verbs.map(({ name, about }) => `    ${quoted(`${name}:${about.replaceAll(':', '\\:')}`)}`).join('\n')}
  )
  if (( CURRENT == 2 )); then
    _describe verb verbs
    return
  fi
  case "$words[2]" in
${verbs.map((verb) => `    ${verb.name}) compadd -- ${wordsOf(verb)} ;;`).join('\n')}
  esac
  _files
}
compdef _${program} ${program}
`;

const fish = (program: string, verbs: readonly Verb[]): string =>
  [
    `# ${program}: completion for fish`,
    ...verbs.flatMap((verb) => [
      `complete -c ${program} -n __fish_use_subcommand -a ${verb.name} -d ${fishQuoted(verb.about)}`,
      ...verb.options.map(
        ({ flag, about }) =>
          `complete -c ${program} -n '__fish_seen_subcommand_from ${verb.name}' -l ${flag.slice(2)} -d ${fishQuoted(about)}`,
      ),
      ...(verb.words.length > 0
        ? [
            `complete -c ${program} -n '__fish_seen_subcommand_from ${verb.name}' -a '${verb.words.join(' ')}'`,
          ]
        : []),
    ]),
    '',
  ].join('\n');

const fishQuoted = (text: string): string => `'${text.replaceAll(/[\\']/g, '\\$&')}'`;

const powershell = (
  program: string,
  verbs: readonly Verb[],
): string => `# ${program}: completion for PowerShell
Register-ArgumentCompleter -Native -CommandName ${program} -ScriptBlock {
  param($word, $line, $at)
  $verbs = @{
${verbs.map((verb) => `    '${verb.name}' = '${wordsOf(verb)}'`).join('\n')}
  }
  $said = $line.CommandElements
  if ($said.Count -le 2 -and -not ($said.Count -eq 2 -and $word -eq '')) {
    $words = $verbs.Keys | Sort-Object
  } else {
    $words = $verbs["$($said[1])"] -split ' '
  }
  $words | Where-Object { $_ -like "$word*" } | ForEach-Object {
    [System.Management.Automation.CompletionResult]::new($_)
  }
}
`;
