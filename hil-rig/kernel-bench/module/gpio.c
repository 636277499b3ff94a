// SPDX-License-Identifier: GPL-2.0
/*
 * A bank of 28 lines under the kind of label a Pi's bank has. Outputs are written down; inputs have
 * the level the rig orders, and three pulse trains run on lines of its choice. An output keeps its
 * level when it is given back: the worst case, as newer Pi kernels do it.
 */
#include <linux/gpio/driver.h>
#include <linux/hrtimer.h>
#include <linux/interrupt.h>
#include <linux/irq.h>
#include <linux/module.h>
#include "bwbench.h"

struct pulse {
	struct hrtimer timer;
	unsigned int line;
	u32 half_nanos;
};

static DEFINE_RAW_SPINLOCK(lock);
static u32 levels; /* of every line */
static u32 outputs; /* which are outputs */
static u32 pulsed; /* which have their level from a pulse train */
static u32 listening; /* whose edges somebody waits for */
static unsigned int edges[BW_LINES];
static struct pulse pulses[BW_PULSES];
static struct gpio_chip bank;

static int direction(struct gpio_chip *gc, unsigned int line)
{
	return READ_ONCE(outputs) & BIT(line) ? GPIO_LINE_DIRECTION_OUT : GPIO_LINE_DIRECTION_IN;
}

static int get(struct gpio_chip *gc, unsigned int line)
{
	return !!(READ_ONCE(levels) & BIT(line));
}

/* True when the level has changed. */
static bool put(unsigned int line, bool high)
{
	unsigned long irq;
	bool changed;

	raw_spin_lock_irqsave(&lock, irq);
	changed = !(levels & BIT(line)) == high;
	levels = high ? levels | BIT(line) : levels & ~BIT(line);
	raw_spin_unlock_irqrestore(&lock, irq);
	return changed;
}

static void set(struct gpio_chip *gc, unsigned int line, int high)
{
	if (put(line, high))
		bw_event(BW_LINE_SET, line, !!high, 0, 0);
}

static int to_input(struct gpio_chip *gc, unsigned int line)
{
	outputs &= ~BIT(line);
	return 0;
}

static int to_output(struct gpio_chip *gc, unsigned int line, int high)
{
	put(line, high);
	outputs |= BIT(line);
	bw_event(BW_LINE_OUTPUT, line, !!high, 0, 0);
	return 0;
}

static int request(struct gpio_chip *gc, unsigned int line)
{
	bw_event(BW_LINE_REQUEST, line, 0, 0, 0);
	return 0;
}

static void release(struct gpio_chip *gc, unsigned int line)
{
	bw_event(BW_LINE_FREE, line, get(gc, line), 0, 0);
}

/* An input has a new level; in interrupt context, as on hardware. */
static void arrive(unsigned int line, bool high)
{
	unsigned int wanted = high ? IRQ_TYPE_EDGE_RISING : IRQ_TYPE_EDGE_FALLING;

	if (put(line, high) && listening & BIT(line) && edges[line] & wanted)
		generic_handle_domain_irq(bank.irq.domain, line);
}

void bw_gpio_levels(u32 wanted)
{
	unsigned int line;

	for (line = 0; line < BW_LINES; line++)
		if (!((outputs | pulsed) & BIT(line)))
			arrive(line, wanted & BIT(line));
}

u32 bw_gpio_outputs(void)
{
	return READ_ONCE(levels) & READ_ONCE(outputs);
}

static enum hrtimer_restart toggle(struct hrtimer *timer)
{
	struct pulse *pulse = container_of(timer, struct pulse, timer);

	if (!pulse->half_nanos)
		return HRTIMER_NORESTART;
	arrive(pulse->line, !(levels & BIT(pulse->line)));
	hrtimer_forward_now(timer, ns_to_ktime(pulse->half_nanos));
	return HRTIMER_RESTART;
}

void bw_gpio_pulse(unsigned int which, unsigned int line, u32 half_nanos)
{
	struct pulse *pulse = &pulses[which];

	if (line >= BW_LINES || outputs & BIT(line))
		half_nanos = 0;
	pulse->half_nanos = half_nanos;
	if (!half_nanos)
		return;
	pulse->line = line;
	pulsed |= BIT(line);
	if (!hrtimer_active(&pulse->timer))
		hrtimer_start(&pulse->timer, ns_to_ktime(half_nanos), HRTIMER_MODE_REL_HARD);
}

static void irq_mask(struct irq_data *d)
{
	listening &= ~BIT(irqd_to_hwirq(d));
	gpiochip_disable_irq(&bank, irqd_to_hwirq(d));
}

static void irq_unmask(struct irq_data *d)
{
	gpiochip_enable_irq(&bank, irqd_to_hwirq(d));
	listening |= BIT(irqd_to_hwirq(d));
}

static int irq_set_type(struct irq_data *d, unsigned int type)
{
	edges[irqd_to_hwirq(d)] = type;
	return type & ~IRQ_TYPE_EDGE_BOTH ? -EINVAL : 0;
}

static const struct irq_chip irqs = {
	.name = "bench-gpio",
	.irq_mask = irq_mask,
	.irq_unmask = irq_unmask,
	.irq_set_type = irq_set_type,
	.flags = IRQCHIP_IMMUTABLE,
	GPIOCHIP_IRQ_RESOURCE_HELPERS,
};

static struct gpio_chip bank = {
	.label = "pinctrl-bench",
	.owner = THIS_MODULE,
	.base = -1,
	.ngpio = BW_LINES,
	.request = request,
	.free = release,
	.get_direction = direction,
	.direction_input = to_input,
	.direction_output = to_output,
	.get = get,
	.set = set,
};

int bw_gpio_add(void)
{
	unsigned int i;

	for (i = 0; i < BW_PULSES; i++) {
		hrtimer_init(&pulses[i].timer, CLOCK_MONOTONIC, HRTIMER_MODE_REL_HARD);
		pulses[i].timer.function = toggle;
	}
	bank.parent = bw_device;
	gpio_irq_chip_set_chip(&bank.irq, &irqs);
	bank.irq.handler = handle_simple_irq;
	bank.irq.default_type = IRQ_TYPE_NONE;
	return gpiochip_add_data(&bank, NULL);
}

void bw_gpio_remove(void)
{
	unsigned int i;

	for (i = 0; i < BW_PULSES; i++)
		hrtimer_cancel(&pulses[i].timer);
	gpiochip_remove(&bank);
}
