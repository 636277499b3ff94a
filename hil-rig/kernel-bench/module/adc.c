// SPDX-License-Identifier: GPL-2.0
/*
 * A full I2C adapter, number 1, with an ADS1115 at 0x48 on it (Texas Instruments, SBAS444, sections
 * 9.3 and 9.6): conversion and configuration register, four inputs against ground, one-shot at
 * 860 SPS, all ranges. Transfers take the time of a 400 kHz bus, conversions that of the chip.
 */
#include <linux/delay.h>
#include <linux/i2c.h>
#include <linux/ktime.h>
#include <linux/module.h>
#include <linux/of.h>
#include "bwbench.h"

#define ADDRESS 0x48
#define BUS 1
#define BYTE_MICROS 23 /* nine bits at 400 kHz */
#define CONVERSION_NANOS 1162791 /* 1/860 s */
#define STARTED 0x8000
#define RESET_CONFIG 0x8583
#define HANG_POLL_MS 5

static const s32 full_scale_uv[8] = {
	6144000, 4096000, 2048000, 1024000, 512000, 256000, 256000, 256000,
};

static s32 input_uv[BW_INPUTS];
static u16 config = RESET_CONFIG;
static s16 result;
static s16 coming;
static u64 ready_nanos;
static bool converting;
static u8 pointer;
static u32 transfers;

void bw_adc_volts(unsigned int input, s32 micro_volts)
{
	WRITE_ONCE(input_uv[input], micro_volts);
}

u32 bw_adc_transfers(void)
{
	return READ_ONCE(transfers);
}

static s16 code(void)
{
	unsigned int mux = config >> 12 & 7;
	s64 uv = mux >= 4 ? READ_ONCE(input_uv[mux - 4]) :
			    READ_ONCE(input_uv[0]) - READ_ONCE(input_uv[1]);

	return clamp_t(s64, div_s64(uv * 32768, full_scale_uv[config >> 9 & 7]), -32768, 32767);
}

static void set_config(u16 word)
{
	config = word & ~STARTED;
	if (word & STARTED) {
		converting = true;
		coming = code();
		ready_nanos = ktime_get_ns() + CONVERSION_NANOS;
	}
}

static u16 get(void)
{
	if (converting && ktime_get_ns() >= ready_nanos && !(bw_faults() & BW_FAULT_STUCK)) {
		converting = false;
		result = coming;
	}
	switch (pointer) {
	case 0:
		return result;
	case 1:
		if (bw_faults() & BW_FAULT_WRONG)
			return 0x00c0; /* as some other chip keeps its first register */
		return config | (converting ? 0 : STARTED);
	default:
		return 0x7fff;
	}
}

/* A real adapter gives up after its time-out; so does this one. */
static int hang(struct i2c_adapter *adapter)
{
	unsigned long until = jiffies + adapter->timeout;

	while (bw_faults() & BW_FAULT_HANG) {
		if (time_after(jiffies, until))
			return -ETIMEDOUT;
		msleep(HANG_POLL_MS);
	}
	return 0;
}

static void message(struct i2c_msg *m)
{
	unsigned int i;

	if (m->flags & I2C_M_RD) {
		u16 word = get();

		for (i = 0; i < m->len; i++)
			m->buf[i] = i & 1 ? word & 0xff : word >> 8;
		return;
	}
	if (m->len >= 1)
		pointer = m->buf[0] & 3;
	if (m->len >= 3 && pointer == 1)
		set_config(m->buf[1] << 8 | m->buf[2]);
}

static int transfer(struct i2c_adapter *adapter, struct i2c_msg *m, int n)
{
	int i, failed, bytes = 0;

	WRITE_ONCE(transfers, transfers + 1);
	failed = hang(adapter);
	if (failed)
		return failed;
	for (i = 0; i < n; i++) {
		if (m[i].addr != ADDRESS || bw_faults() & BW_FAULT_NAK)
			return -EREMOTEIO; /* as i2c-bcm2835 reports a missing acknowledge */
		message(&m[i]);
		bytes += m[i].len + 1;
	}
	usleep_range(bytes * BYTE_MICROS, bytes * BYTE_MICROS + 10);
	return n;
}

static u32 functionality(struct i2c_adapter *adapter)
{
	return I2C_FUNC_I2C | I2C_FUNC_SMBUS_EMUL;
}

static const struct i2c_algorithm algorithm = {
	.master_xfer = transfer,
	.functionality = functionality,
};

static struct i2c_adapter adapter = {
	.owner = THIS_MODULE,
	.algo = &algorithm,
	.name = "bench i2c",
	.nr = BUS,
};

int bw_adc_add(void)
{
	adapter.dev.parent = bw_device;
	/* It states the clock of the bus, as the node of a Pi's adapter does. */
	adapter.dev.of_node = of_find_node_by_path("/bench-i2c");
	return i2c_add_numbered_adapter(&adapter);
}

void bw_adc_remove(void)
{
	i2c_del_adapter(&adapter);
	of_node_put(adapter.dev.of_node);
}
