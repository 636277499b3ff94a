#!/usr/bin/env bash
# Builds what the kernel bench boots: Debian's arm64 kernel, the bench's own kernel module, a small
# root file system with Java, a device tree. Kept under target/, made anew only when the kernel's
# version or what goes into it changes. Prints the folder.
set -euo pipefail

here=$(dirname -- "$(readlink -f -- "${BASH_SOURCE[0]}")")
target=$here/../target/kernel-bench
cross=aarch64-linux-gnu-
compiler=${cross}gcc-12
# Guest seconds are this many emulated seconds: the guest sees one processor of this many times
# 10^9 instructions a second. A Raspberry Pi 4 has four of 1.5 GHz.
slower=4
machine=(-M virt -cpu cortex-a72 -smp 1 -m 1024)

say() { printf 'kernel-bench: %s\n' "$*" >&2; }
die() { say "$*"; exit 2; }

# tool:package
tools=(qemu-system-aarch64:qemu-system-arm "$compiler:gcc-12-aarch64-linux-gnu" cpio:cpio make:make
  xz:xz-utils fdtput:device-tree-compiler mke2fs:e2fsprogs dpkg-deb:dpkg apt-get:apt bc:bc)
missing=()
for tool in "${tools[@]}"; do
  command -v "${tool%%:*}" >/dev/null || missing+=("${tool##*:}")
done
((${#missing[@]} == 0)) ||
  die "missing: ${missing[*]}; sudo apt install --no-install-recommends ${missing[*]}"

mkdir -p "$target"
# An apt of its own for arm64: the host gets no foreign architecture and needs no root.
state=$target/apt
mkdir -p "$state"/lists/partial "$state"/cache/archives/partial
: >"$state/status"
arm=(-qq -o Dir::State="$state" -o Dir::State::status="$state/status" -o Dir::Cache="$state/cache"
  -o APT::Architecture=arm64 -o APT::Architectures=arm64 -o APT::Sandbox::User="$(id -un)"
  -o DPkg::Lock::Timeout=120)

content=$(cat "$here"/build.sh "$here"/guest-init "$here"/module/* | sha256sum | cut -c1-12)

# The newest image fits when nothing of its content changed; the kernel's version is in its name.
for made in "$target"/image-*-"$content"; do
  if [[ -e $made/complete ]]; then
    printf '%s\n' "$made"
    exit
  fi
done

begun=$SECONDS
say 'building the guest, once: packages ...'
apt-get "${arm[@]}" update ||
  die 'the package lists of Debian arm64 cannot be had; the bench needs them once'
package=$(apt-cache "${arm[@]}" depends linux-image-arm64 | awk '/Depends: linux-image/{print $2; exit}')
[[ -n $package ]] || die 'Debian has no linux-image-arm64; its mirror must carry arm64'
version=${package#linux-image-}
short=${version%.*-*-arm64} # 6.1.0-56-arm64 -> 6.1
image=$target/image-$version-$content

debs=$target/debs
mkdir -p "$debs"
guest_packages=("$package" openjdk-17-jre-headless libc6 zlib1g libgcc-s1 libstdc++6 busybox-static
  bash libtinfo6 util-linux libcap-ng0)
(cd "$debs" && apt-get "${arm[@]}" download "${guest_packages[@]}" "linux-headers-$version" \
  "linux-headers-${version%-arm64}-common") || die 'a package of the guest cannot be downloaded'
# Runs here, so it is of this machine's architecture.
(cd "$debs" && apt-get -qq -o APT::Sandbox::User="$(id -un)" download "linux-kbuild-$short") ||
  die "linux-kbuild-$short cannot be downloaded: is this Debian the one the guest is of?"

rm -rf "$image"
work=$image/work
mkdir -p "$work"/{kernel,headers,root,module}
unpack() { dpkg-deb --fsys-tarfile "$(newest "$1")" | tar -x -C "$2" --keep-directory-symlink "${@:3}"; }
newest() { ls -t "$debs/$1"_*.deb | head -1; }

say "building the guest, once: module for $version ..."
for p in "linux-headers-$version" "linux-headers-${version%-arm64}-common" "linux-kbuild-$short"; do
  unpack "$p" "$work/headers"
done
headers=$work/headers/usr/src/linux-headers-$version
sed -i "s|/usr/src/|$work/headers/usr/src/|" "$headers/Makefile"
cp "$here"/module/* "$work/module/"
make -s -C "$headers" ARCH=arm64 CROSS_COMPILE=$cross CC=$compiler M="$work/module" modules >&2
"${cross}strip" -g "$work/module/bwbench.ko"

say 'building the guest, once: root file system ...'
unpack "$package" "$work/kernel" --wildcards './boot/vmlinuz*' \
  '*/'{i2c-dev,softdog,virtio_blk,virtio_mmio,ext4,jbd2,mbcache,crc16,crc32c_generic}.ko
root=$work/root
for folder in bin sbin lib; do
  mkdir -p "$root/usr/$folder"
  ln -s "usr/$folder" "$root/$folder"
done
mkdir -p "$root"/{proc,sys,dev,tmp,data,modules,opt,etc}
for p in "${guest_packages[@]:1}"; do
  unpack "$p" "$root" --exclude='./usr/share/*' --exclude='*/ct.sym' --exclude='*/classes_nocoops.jsa'
done
for applet in $(echo sh mount umount mountpoint ls cat echo sleep dmesg mkdir \
  mknod rm mv cp chmod chown chgrp ln kill ps grep sed cut head tail tr date sync insmod rmmod env \
  readlink dirname basename find sort touch id stat wc test true false awk xargs od setsid); do
  [[ -e $root/bin/$applet ]] || ln -s busybox "$root/bin/$applet"
done
ln -s "$(cd "$root" && echo usr/lib/jvm/java-17-openjdk-*/bin/java)" "$root/java"
find "$work/kernel" -name '*.ko' -exec cp {} "$root/modules/" \;
cp "$work/module/bwbench.ko" "$root/modules/"
printf 'root:x:0:0::/:/bin/sh\ndriver:x:1000:1000::/tmp:/bin/sh\nvisitor:x:1001:1001::/tmp:/bin/sh\n' \
  >"$root/etc/passwd"
printf 'root:x:0:\ndriver:x:1000:\nvisitor:x:1001:\ngpio:x:997:driver\ni2c:x:998:driver\n' \
  >"$root/etc/group"
install -m 755 "$here/guest-init" "$root/init"
(cd "$root" && find . | cpio -o -H newc --quiet) >"$image/root.cpio"
cp "$work"/kernel/boot/vmlinuz* "$image/vmlinuz"

# The tree of the emulated board, and what a Pi's says beside it.
dtb=$image/board.dtb
qemu-system-aarch64 "${machine[@]/virt/virt,dumpdtb=$dtb}" -nic none >/dev/null 2>&1
fdtput -t s "$dtb" / model 'Raspberry Pi 4 Model B Rev 1.4'
fdtput -c "$dtb" /bench-i2c
fdtput -t i "$dtb" /bench-i2c clock-frequency 400000
fdtput -t i "$dtb" /timer clock-frequency $((62500000 * slower))

printf '%s\n' "${machine[@]}" >"$image/machine"
rm -rf "$work"
touch "$image/complete"
for old in "$target"/image-*; do [[ $old == "$image" ]] || rm -rf "$old"; done
say "the guest is built ($((SECONDS - begun)) s)"
printf '%s\n' "$image"
