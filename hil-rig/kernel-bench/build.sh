#!/usr/bin/env bash
# Builds what the kernel bench boots and prints its folder: base (build-base.sh), the bench's own
# kernel module and the guest's first program. Everything is kept under target/ and made anew only
# when the kernel's version or what goes into it changes.
set -euo pipefail

here=$(dirname -- "$(readlink -f -- "${BASH_SOURCE[0]}")")
mkdir -p "$here/../target/kernel-bench"
target=$(readlink -f -- "$here/../target/kernel-bench")
cross=aarch64-linux-gnu-
compiler=${cross}gcc-12

say() { printf 'kernel-bench: %s\n' "$*" >&2; }

# command:package
tools=(qemu-system-aarch64:qemu-system-arm "$compiler:gcc-12-aarch64-linux-gnu" cpio:cpio
  make:make fdtput:device-tree-compiler mke2fs:e2fsprogs debugfs:e2fsprogs dpkg-deb:dpkg
  apt-get:apt mkfifo:coreutils)
missing=()
for tool in "${tools[@]}"; do
  command -v "${tool%%:*}" >/dev/null || missing+=("${tool##*:}")
done
if ((${#missing[@]})); then
  say "missing: ${missing[*]}"
  say "next: sudo apt install --no-install-recommends ${missing[*]}"
  exit 2
fi

exec 9>"$target/lock"
flock 9 # two at once: the second finds everything built
begun=$SECONDS
hash() { cat "$@" | sha256sum | cut -c1-12; }

key=$(hash "$here/build-base.sh")
base=$(find "$target" -maxdepth 2 -path "*/base-*-$key/complete" -printf '%h\n' -quit)
[[ -n $base ]] || base=$("$here/build-base.sh" "$target" "$key")

image=$target/image-$(hash "$here"/{build-base.sh,guest-init} "$here"/module/*)
if [[ ! -e $image/complete ]]; then
  say 'building module and image ...'
  rm -rf "$image"
  mkdir -p "$image"/parts/{module,tree/modules}
  cp "$here"/module/* "$image/parts/module/"
  make -s -C "$base/headers/build" ARCH=arm64 CROSS_COMPILE=$cross CC=$compiler \
    M="$image/parts/module" modules 2>&1 | sed '/^Skipping BTF/d' >&2
  "${cross}strip" -g "$image/parts/module/bwbench.ko"
  cp "$image/parts/module/bwbench.ko" "$image/parts/tree/modules/"
  install -m 755 "$here/guest-init" "$image/parts/tree/init"
  (cd "$image/parts/tree" && find . | cpio -o -H newc --quiet) | cat "$base/root.cpio" - \
    >"$image/initrd"
  ln -s "../$(basename "$base")"/{vmlinuz,board.dtb,machine} "$image/"
  rm -rf "$image/parts"
  touch "$image/complete"
  for old in "$target"/base-* "$target"/image-*; do
    [[ $old == "$base" || $old == "$image" ]] || rm -rf "$old"
  done
  say "built in $((SECONDS - begun)) s"
fi
printf '%s\n' "$image"
