#!/usr/bin/env bash
# Packs the editor extension as schematic-editor.vsix. Needs node and npm, and nothing of the solution.
set -euo pipefail
cd "$(dirname "$0")"
out=${1:-$PWD/out}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cp -r package.json package-lock.json extension.js language-configuration.json syntaxes README.md ../../LICENSE "$work"
cd "$work"
npm ci --omit=dev --no-audit --no-fund --ignore-scripts
node --check extension.js
node -e "for (const f of ['package.json', 'language-configuration.json', 'syntaxes/panel.tmLanguage.json']) JSON.parse(require('fs').readFileSync(f))"
npx --yes @vscode/vsce@4.1.0 package --allow-missing-repository --out schematic-editor.vsix
mkdir -p "$out"
cp schematic-editor.vsix "$out"
echo "$out/schematic-editor.vsix"
