// SPDX-License-Identifier: GPL-2.0
/*
 * The line to the rig. Every few milliseconds of the machine's time it is told what the machine did
 * and orders what its inputs are next; while the rig thinks, the whole machine stands still and its
 * clock with it. So both sides have one time, however slow the emulation is or busy the host.
 *
 * The bytes go through two named pipes of the host by semihosting (Arm IHI 0100, "Semihosting for
 * AArch32 and AArch64"): a call is a trap, in which QEMU reads or writes the pipe.
 */
#include <linux/hrtimer.h>
#include <linux/ktime.h>
#include <linux/module.h>
#include "bwbench.h"

#define SYS_OPEN 0x01
#define SYS_WRITE 0x05
#define SYS_READ 0x06
#define SYS_EXIT 0x18
#define MODE_READ 1 /* "rb" */
#define MODE_WRITE 5 /* "wb" */
#define APPLICATION_EXIT 0x20026
#define FIRST_STEP_NANOS 5000000

static const char to_rig[] = "to-rig";
static const char from_rig[] = "from-rig";

static struct hrtimer timer;
static long writing = -1;
static long reading = -1;
static struct {
	struct bw_report head;
	struct bw_event events[BW_EVENTS];
	char text[BW_TEXT_OUT];
} report;
static struct bw_orders orders;
static char typed[BW_TEXT_IN];

static long call(unsigned long what, const void *arguments)
{
	register unsigned long x0 asm("x0") = what;
	register const void *x1 asm("x1") = arguments;

	asm volatile("hlt #0xf000" : "+r"(x0) : "r"(x1) : "memory");
	return x0;
}

static long open(const char *path, size_t length, u64 mode)
{
	u64 arguments[] = { (u64)path, mode, length };

	return call(SYS_OPEN, arguments);
}

static void __noreturn off(u64 code)
{
	u64 arguments[] = { APPLICATION_EXIT, code };

	call(SYS_EXIT, arguments);
	for (;;)
		;
}

/* Everything or the end: without the rig there is nothing to go on for. */
static void all(u64 what, long handle, const void *data, size_t length)
{
	while (length) {
		u64 arguments[] = { handle, (u64)data, length };
		size_t left = call(what, arguments);

		if (left >= length)
			off(3);
		data += length - left;
		length = left;
	}
}

static void tell(void)
{
	u32 lost;
	size_t events = bw_events_take(report.events, BW_EVENTS, &lost);
	size_t text = bw_console_take(report.text, sizeof(report.text));

	report.head.magic = cpu_to_le32(BW_MAGIC_REPORT);
	report.head.events = cpu_to_le32(events);
	report.head.text = cpu_to_le32(text);
	report.head.lost_events = cpu_to_le32(lost);
	report.head.nanos = cpu_to_le64(ktime_get_ns());
	report.head.outputs = cpu_to_le32(bw_gpio_outputs());
	report.head.transfers = cpu_to_le32(bw_adc_transfers());
	all(SYS_WRITE, writing, &report.head, sizeof(report.head));
	all(SYS_WRITE, writing, report.events, events * sizeof(report.events[0]));
	all(SYS_WRITE, writing, report.text, text);
}

static void obey(void)
{
	unsigned int i;
	size_t text;

	all(SYS_READ, reading, &orders, sizeof(orders));
	text = le32_to_cpu(orders.text);
	if (le32_to_cpu(orders.magic) != BW_MAGIC_ORDERS || text > sizeof(typed))
		off(4);
	all(SYS_READ, reading, typed, text);
	if (!orders.step_nanos)
		off(0);
	for (i = 0; i < BW_INPUTS; i++)
		bw_adc_volts(i, (s32)le32_to_cpu(orders.micro_volts[i]));
	for (i = 0; i < BW_PULSES; i++)
		bw_gpio_pulse(i, le32_to_cpu(orders.pulse[i].line),
			      le32_to_cpu(orders.pulse[i].half_nanos));
	bw_gpio_levels(le32_to_cpu(orders.levels));
	if (text)
		bw_console_type(typed, text);
}

u32 bw_faults(void)
{
	return le32_to_cpu(READ_ONCE(orders.faults));
}

static enum hrtimer_restart exchange(struct hrtimer *t)
{
	tell();
	obey();
	hrtimer_forward_now(t, ns_to_ktime(le32_to_cpu(orders.step_nanos)));
	return HRTIMER_RESTART;
}

int bw_lockstep_add(void)
{
	writing = open(to_rig, sizeof(to_rig) - 1, MODE_WRITE);
	reading = open(from_rig, sizeof(from_rig) - 1, MODE_READ);
	if (writing < 0 || reading < 0)
		return -ENODEV;
	hrtimer_init(&timer, CLOCK_MONOTONIC, HRTIMER_MODE_ABS_HARD);
	timer.function = exchange;
	hrtimer_start(&timer, roundup(ktime_get_ns(), (u64)FIRST_STEP_NANOS), HRTIMER_MODE_ABS_HARD);
	return 0;
}

void bw_lockstep_remove(void)
{
	hrtimer_cancel(&timer);
}
