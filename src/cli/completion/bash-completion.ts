import { PROGRAM_OPTIONS } from "./completion-command.js";
import type { CompletionCommand, CompletionOption } from "./completion-command.js";
import type { Offer } from "../option-groups.js";

/** The script that bash sources. Its words are those of the table: letters, digits and dashes, nothing to quote. */
export function bashCompletion(commands: readonly CompletionCommand[]): string {
  const names = commands.map(({ name }) => name).join(" ");
  return `# Completion of stillband for bash 4 or later. In ~/.bashrc: source <(stillband completion bash)
_stillband() {
  local word=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD - 1]} command= index
  COMPREPLY=()
  if [[ $word == "=" ]]; then
    word=
  elif [[ $before == "=" ]]; then
    before=\${COMP_WORDS[COMP_CWORD - 2]}
  fi
  for ((index = 1; index < COMP_CWORD; index++)); do
    if [[ \${COMP_WORDS[index]} != -* ]]; then
      command=\${COMP_WORDS[index]}
      break
    fi
  done
  case "$command $before" in
${commands.flatMap(valueCases).join("\n")}
  esac
  case "$command" in
    "")
      if [[ $word == -* ]]; then
        ${offered({ words: flagsOf(PROGRAM_OPTIONS) })}
      else
        ${offered({ words: names.split(" ") })}
      fi
      ;;
${commands.map(commandCase).join("\n")}
  esac
}
complete -F _stillband stillband
`;
}

/** Behind an option that takes a value: its words, files, or nothing at all. */
function valueCases({ name, options }: CompletionCommand): string[] {
  const valued = options.filter(({ valueName }) => valueName !== null);
  const byAnswer = new Map<string, string[]>();
  for (const { flags, offer } of valued) {
    const answer = offered(offer);
    byAnswer.set(answer, [...(byAnswer.get(answer) ?? []), ...flags.map((flag) => `"${name} ${flag}"`)]);
  }
  return [...byAnswer].map(
    ([answer, patterns]) => `    ${patterns.join(" | ")})\n      ${answer}\n      return\n      ;;`,
  );
}

function commandCase({ name, options, operands }: CompletionCommand): string {
  return `    ${name})
      if [[ $word == -* ]]; then
        ${offered({ words: flagsOf(options) })}
      else
        ${offered(operands)}
      fi
      ;;`;
}

function flagsOf(options: readonly CompletionOption[]): string[] {
  return options.flatMap(({ flags }) => flags);
}

function offered({ words = [], files }: Offer): string {
  const generators = [
    ...(words.length > 0 ? [`compgen -W "${words.join(" ")}" -- "$word"`] : []),
    ...(files ? ['compgen -f -- "$word"'] : []),
  ];
  if (generators.length === 0) return ":";
  const filenames = files ? "; compopt -o filenames 2>/dev/null" : "";
  return `mapfile -t COMPREPLY < <(${generators.join("; ")})${filenames}`;
}
