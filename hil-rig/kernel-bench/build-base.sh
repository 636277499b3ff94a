#!/usr/bin/env bash
# Makes what the guest of the kernel bench is built on, once for each kernel version: Debian's arm64
# kernel with its headers, a root file system with Java, the device tree. build-base.sh TARGET HASH;
# prints the folder.
set -euo pipefail

target=$1
hash=$2
# Guest seconds are this many emulated seconds: the guest sees one processor of this many times
# 10^9 instructions a second. A Raspberry Pi 4 has four of 1.5 GHz.
slower=4
machine=(-M virt -cpu cortex-a72 -smp 1 -m 1024)

say() { printf 'kernel-bench: %s\n' "$*" >&2; }
die() { say "$*"; exit 2; }

# An apt of its own for arm64: the host gets no foreign architecture and needs no root.
state=$target/apt
mkdir -p "$state"/lists/partial "$state"/cache/archives/partial
: >"$state/status"
me=$(id -un)
arm=(-qq -o Dir::State="$state" -o Dir::State::status="$state/status" -o Dir::Cache="$state/cache"
  -o APT::Architecture=arm64 -o APT::Architectures=arm64 -o APT::Sandbox::User="$me"
  -o DPkg::Lock::Timeout=120)

say 'once: packages of the guest ...'
apt-get "${arm[@]}" update ||
  die 'the package lists of Debian arm64 cannot be had; the bench needs them once'
package=$(apt-cache "${arm[@]}" depends linux-image-arm64 |
  awk '/Depends: linux-image/ { print $2; exit }')
[[ -n $package ]] || die 'there is no linux-image-arm64; the mirror must be one of Debian with arm64'
version=${package#linux-image-} # 6.1.0-56-arm64
abi=${version%-arm64}
debs=$target/debs
mkdir -p "$debs"
guest=(openjdk-17-jre-headless libc6 zlib1g libgcc-s1 libstdc++6 busybox-static bash libtinfo6
  util-linux libcap-ng0)
headers=("linux-headers-$version" "linux-headers-$abi-common")
kbuild=linux-kbuild-${abi%.*-*} # runs here, so it is of this machine's architecture
(cd "$debs" && apt-get "${arm[@]}" download "$package" "${headers[@]}" "${guest[@]}") ||
  die 'a package of the guest cannot be downloaded'
(cd "$debs" && apt-get -qq -o APT::Sandbox::User="$me" download "$kbuild") ||
  die "$kbuild cannot be downloaded; the guest has to be of this machine's Debian release"

newest() { find "$debs" -name "$1_*.deb" -printf '%T@ %p\n' | sort -n | tail -1 | cut -d' ' -f2-; }
unpack() {
  dpkg-deb --fsys-tarfile "$(newest "$1")" | tar -x -C "$2" --keep-directory-symlink "${@:3}"
}

base=$target/base-$version-$hash
rm -rf "$base"
mkdir -p "$base"/headers "$base"/parts/{kernel,root}
say "once: headers and root file system for $version ..."
for name in "${headers[@]}" "$kbuild"; do
  unpack "$name" "$base/headers"
done
ln -s "usr/src/linux-headers-$version" "$base/headers/build"
sed -i "s|/usr/src/|$base/headers/usr/src/|" "$base/headers/build/Makefile"

unpack "$package" "$base/parts/kernel" --wildcards './boot/vmlinuz*' \
  '*/'{i2c-dev,softdog,virtio_blk,virtio_mmio,ext4,jbd2,mbcache,crc16,crc32c_generic}.ko
root=$base/parts/root
for folder in bin sbin lib; do
  mkdir -p "$root/usr/$folder"
  ln -s "usr/$folder" "$root/$folder"
done
mkdir -p "$root"/{proc,sys,dev,tmp,data,modules,opt,etc}
for name in "${guest[@]}"; do
  unpack "$name" "$root" --exclude='./usr/share/*' --exclude='*/ct.sym' \
    --exclude='*/classes_nocoops.jsa'
done
for applet in sh mount umount ls cat echo sleep dmesg mkdir rm mv cp chmod chown chgrp ln kill ps \
  grep sed cut head tail tr date sync insmod rmmod env readlink dirname basename find sort touch id \
  wc dd df setsid; do
  [[ -e $root/bin/$applet ]] || ln -s busybox "$root/bin/$applet"
done
ln -s "$(cd "$root" && echo usr/lib/jvm/java-17-openjdk-*/bin/java)" "$root/java"
find "$base/parts/kernel" -name '*.ko' -exec cp {} "$root/modules/" \;
cat >"$root/etc/passwd" <<'END'
root:x:0:0::/:/bin/sh
driver:x:1000:1000::/tmp:/bin/sh
visitor:x:1001:1001::/tmp:/bin/sh
END
cat >"$root/etc/group" <<'END'
root:x:0:
driver:x:1000:
visitor:x:1001:
gpio:x:997:driver
i2c:x:998:driver
END
(cd "$root" && find . | cpio -o -H newc --quiet) >"$base/root.cpio"
cp "$base"/parts/kernel/boot/vmlinuz* "$base/vmlinuz"

# The tree of the emulated board, and what a Pi's says beside it.
dtb=$base/board.dtb
qemu-system-aarch64 "${machine[@]/virt/virt,dumpdtb=$dtb}" -nic none >/dev/null 2>&1
fdtput -t s "$dtb" / model 'Raspberry Pi 4 Model B Rev 1.4'
fdtput -c "$dtb" /bench-i2c
fdtput -t i "$dtb" /bench-i2c clock-frequency 400000
fdtput -t i "$dtb" /timer clock-frequency $((62500000 * slower))
printf '%s\n' "${machine[@]}" >"$base/machine"

rm -rf "$base/parts"
touch "$base/complete"
printf '%s\n' "$base"
