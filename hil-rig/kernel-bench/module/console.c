// SPDX-License-Identifier: GPL-2.0
/* /dev/bwbench: what the rig types for the guest's shell, and what the shell answers. */
#include <linux/fs.h>
#include <linux/miscdevice.h>
#include <linux/module.h>
#include <linux/spinlock.h>
#include <linux/uaccess.h>
#include <linux/wait.h>
#include "bwbench.h"

static DEFINE_RAW_SPINLOCK(lock);
static DECLARE_WAIT_QUEUE_HEAD(typed);
static DECLARE_WAIT_QUEUE_HEAD(taken);
static char in[BW_TEXT_IN];
static size_t in_length;
static char out[BW_TEXT_OUT];
static size_t out_length;

size_t bw_console_take(char *to, size_t room)
{
	unsigned long irq;
	size_t length;

	raw_spin_lock_irqsave(&lock, irq);
	length = min(room, out_length);
	memcpy(to, out, length);
	memmove(out, out + length, out_length - length);
	out_length -= length;
	raw_spin_unlock_irqrestore(&lock, irq);
	if (length)
		wake_up(&taken);
	return length;
}

void bw_console_type(const char *text, size_t length)
{
	unsigned long irq;

	raw_spin_lock_irqsave(&lock, irq);
	length = min(length, sizeof(in) - in_length);
	memcpy(in + in_length, text, length);
	in_length += length;
	raw_spin_unlock_irqrestore(&lock, irq);
	wake_up(&typed);
}

static ssize_t console_read(struct file *file, char __user *to, size_t room, loff_t *at)
{
	char chunk[256];
	unsigned long irq;
	size_t length;

	if (wait_event_interruptible(typed, READ_ONCE(in_length) > 0))
		return -ERESTARTSYS;
	raw_spin_lock_irqsave(&lock, irq);
	length = min3(room, in_length, sizeof(chunk));
	memcpy(chunk, in, length);
	memmove(in, in + length, in_length - length);
	in_length -= length;
	raw_spin_unlock_irqrestore(&lock, irq);
	return copy_to_user(to, chunk, length) ? -EFAULT : length;
}

static ssize_t console_write(struct file *file, const char __user *from, size_t count, loff_t *at)
{
	char chunk[256];
	unsigned long irq;
	size_t length = min(count, sizeof(chunk));

	if (copy_from_user(chunk, from, length))
		return -EFAULT;
	if (wait_event_interruptible(taken, READ_ONCE(out_length) + length <= sizeof(out)))
		return -ERESTARTSYS;
	raw_spin_lock_irqsave(&lock, irq);
	length = min(length, sizeof(out) - out_length);
	memcpy(out + out_length, chunk, length);
	out_length += length;
	raw_spin_unlock_irqrestore(&lock, irq);
	return length;
}

static const struct file_operations operations = {
	.owner = THIS_MODULE,
	.read = console_read,
	.write = console_write,
};

static struct miscdevice console = {
	.minor = MISC_DYNAMIC_MINOR,
	.name = "bwbench",
	.fops = &operations,
};

int bw_console_add(void)
{
	return misc_register(&console);
}

void bw_console_remove(void)
{
	misc_deregister(&console);
}
