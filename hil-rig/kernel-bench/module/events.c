// SPDX-License-Identifier: GPL-2.0
/* Everything that is worth judging, with the time at which the kernel did it. */
#include <linux/ktime.h>
#include <linux/spinlock.h>
#include "bwbench.h"

static DEFINE_RAW_SPINLOCK(lock);
static struct bw_event ring[BW_EVENTS];
static unsigned int count;
static u32 lost_so_far;

void bw_event(enum bw_event_kind kind, unsigned int number, unsigned int flags, u64 a, u64 b)
{
	unsigned long irq;

	raw_spin_lock_irqsave(&lock, irq);
	if (count < BW_EVENTS) {
		ring[count].kind = cpu_to_le32(kind);
		ring[count].number = cpu_to_le16(number);
		ring[count].flags = cpu_to_le16(flags);
		ring[count].nanos = cpu_to_le64(ktime_get_ns());
		ring[count].a = cpu_to_le64(a);
		ring[count].b = cpu_to_le64(b);
		count++;
	} else {
		lost_so_far++;
	}
	raw_spin_unlock_irqrestore(&lock, irq);
}

size_t bw_events_take(struct bw_event *to, size_t room, u32 *lost)
{
	unsigned long irq;
	size_t taken;

	raw_spin_lock_irqsave(&lock, irq);
	taken = min_t(size_t, count, room);
	memcpy(to, ring, taken * sizeof(*to));
	/* The room is that of the ring: nothing is ever left behind. */
	count = 0;
	*lost = lost_so_far;
	raw_spin_unlock_irqrestore(&lock, irq);
	return taken;
}
