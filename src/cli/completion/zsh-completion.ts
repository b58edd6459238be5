import type { Offer } from "../option-groups.js";
import { PROGRAM_OPTIONS } from "./completion-command.js";
import type { CompletionCommand, CompletionOption } from "./completion-command.js";

/** The script that zsh autoloads as `_stillband` or sources. */
export function zshCompletion(commands: readonly CompletionCommand[]): string {
  return `#compdef stillband
# zsh completion for stillband. In a folder of $fpath as _stillband, or: source <(stillband completion zsh)
_stillband() {
  local curcontext="$curcontext" state line
  typeset -A opt_args
  local -a commands
  commands=(
${commands.map(({ name, summary }) => `    ${quoted(`${name}:${summary}`)}`).join("\n")}
  )
  _arguments -C \\
${PROGRAM_OPTIONS.flatMap(optionSpecs)
  .map((spec) => `    ${spec} \\`)
  .join("\n")}
    '1:command:->command' \\
    '*::word:->word'
  case $state in
    command)
      _describe -t commands command commands
      ;;
    word)
      case $words[1] in
${commands.map(commandCase).join("\n")}
      esac
      ;;
  esac
}
if [ "$funcstack[1]" = "_stillband" ]; then
  _stillband "$@"
else
  compdef _stillband stillband
fi
`;
}

function commandCase({ name, options, operands }: CompletionCommand): string {
  const specs = [...options.flatMap(optionSpecs), quoted(`*:word:${action(operands)}`)];
  return `        ${name})
          _arguments \\
${specs.map((spec) => `            ${spec}`).join(" \\\n")}
          ;;`;
}

/** One for each of its flags; those of one option exclude each other unless it may be repeated. */
function optionSpecs({ flags, valueName, mayRepeat, meaning, offer }: CompletionOption): string[] {
  const apart = mayRepeat ? "*" : flags.length > 1 ? `(${flags.join(" ")})` : "";
  const value = valueName === null ? "" : `:${inSpec(valueName)}:${action(offer)}`;
  return flags.map((flag) => {
    const equals = valueName !== null && flag.startsWith("--") ? "=" : "";
    return quoted(`${apart}${flag}${equals}[${inSpec(meaning)}]${value}`);
  });
}

function action({ words = [], files }: Offer): string {
  if (files && words.length > 0) return `{ compadd -- ${words.join(" ")}; _files }`;
  if (files) return "_files";
  return words.length > 0 ? `(${words.join(" ")})` : " ";
}

function inSpec(text: string): string {
  return text.replace(/[\\:[\]]/g, "\\$&");
}

function quoted(text: string): string {
  return `'${text.replaceAll("'", "'\\''")}'`;
}
