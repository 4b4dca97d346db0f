# Sourced by serve, build and test: makes .venv and node_modules fit the two lock files.
# The caller has set -euo pipefail; everything runs from the project's own folder.

cd "$(dirname "${BASH_SOURCE[0]}")/.."
unset PYTHONDONTWRITEBYTECODE  # dozens of Pythons start here, and each would compile everything anew

say() { printf '%s\n' "$*"; }
stop() { printf '%s\n' "$*" >&2; exit 1; }

# Prints the newest Python that fits. Each candidate is started, because a pyenv shim on PATH
# can stand for a version that is not switched on.
newest_python() {
  local candidate number best="" best_number=0
  local -a candidates=()
  local pyenv_root="${PYENV_ROOT:-$HOME/.pyenv}"
  local folder
  local IFS=:
  for folder in $PATH; do candidates+=("$folder"/python3 "$folder"/python3.[0-9]*); done
  unset IFS
  candidates+=("$pyenv_root"/versions/*/bin/python3)
  for candidate in "${candidates[@]}"; do
    [[ -x $candidate && $candidate != *-config ]] || continue
    number=$("$candidate" -c 'import sys, venv, ensurepip; print(sys.version_info[0] * 1000 + sys.version_info[1])' 2>/dev/null) || continue
    [[ $number =~ ^[0-9]+$ ]] || continue
    if (( number >= 3012 && number > best_number )); then best=$candidate best_number=$number; fi
  done
  [[ -n $best ]] || return 1
  printf '%s\n' "$best"
}

sha256() { if command -v sha256sum >/dev/null; then sha256sum "$@"; else shasum -a 256 "$@"; fi; }
hash_of() { sha256 "$@" | sha256 | cut -c1-64; }

set_up_python() {
  local stamp=.venv/lugwise-requirements wanted python
  wanted=$(hash_of requirements.txt)
  # A .venv that was moved or whose Python has gone cannot start: make it again.
  if [[ -f $stamp && $(<"$stamp") == "$wanted" ]] && .venv/bin/python -c '' 2>/dev/null; then return; fi
  python=$(newest_python) || stop "Lugwise needs Python 3.12 or newer with its venv module: install python3 and python3-venv from your system, or a newer Python with pyenv."
  say "Making .venv with $("$python" --version) …"
  "$python" -m venv --clear .venv
  say "Installing the Python packages in requirements.txt (about a minute) …"
  local said
  said=$(.venv/bin/python -m pip install --quiet --disable-pip-version-check --require-hashes --no-deps -r requirements.txt 2>&1) || stop "$said"
  # Its maker has taken back a version that is locked: pip would install it all the same.
  [[ $said != *yanked* ]] || stop "$said"
  printf '%s\n' "$wanted" > "$stamp"
}

set_up_node() {
  local stamp=node_modules/.lugwise-lock wanted major
  major=$(node -p 'process.versions.node.split(".")[0]' 2>/dev/null) || major=0
  (( major >= 20 )) && command -v npm >/dev/null || stop "Lugwise needs Node.js 20 or newer with npm, to build the Python that runs in the page: install nodejs and npm."
  wanted=$(hash_of package.json package-lock.json)
  if [[ -f $stamp && $(<"$stamp") == "$wanted" ]]; then return; fi
  say "Installing the npm packages in package-lock.json …"
  npm ci --ignore-scripts --no-audit --no-fund --no-update-notifier --loglevel=error
  printf '%s\n' "$wanted" > "$stamp"
}

# Two scripts started at once must not install into one folder together.
set_up() {
  mkdir -p build
  exec 9> build/.set-up
  if command -v flock >/dev/null; then flock 9; fi
  set_up_python
  set_up_node
  exec 9>&-
}
