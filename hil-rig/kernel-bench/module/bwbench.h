/* SPDX-License-Identifier: GPL-2.0 */
/*
 * The kernel bench: a converter, a PWM chip and a GPIO bank as drivers of a real kernel, with the
 * rig outside the machine as their other end.
 */
#ifndef BWBENCH_H
#define BWBENCH_H

#include <linux/device.h>
#include <linux/types.h>

#define BW_LINES 28 /* as many as a Raspberry Pi has on its header */
#define BW_INPUTS 4 /* of the converter */
#define BW_PULSES 3 /* engine speed, road speed, and one more for storms */
#define BW_EVENTS 1024
#define BW_TEXT_OUT 32768
#define BW_TEXT_IN 4096

/* What goes wrong; the rig sets and clears the bits. */
#define BW_FAULT_NAK 0x01 /* the converter does not answer */
#define BW_FAULT_HANG 0x02 /* a transfer does not end until the adapter gives up */
#define BW_FAULT_STUCK 0x04 /* a conversion does not end */
#define BW_FAULT_WRONG 0x08 /* another chip answers */
#define BW_FAULT_PERIOD 0x10 /* the PWM chip refuses another period */

/* What happened; the rig judges from these. */
enum bw_event_kind {
	BW_PWM_APPLY = 1, /* a = period, b = duty, ns; flags bit 0 enabled, bit 1 inverted */
	BW_PWM_REFUSED = 2, /* a = period that was refused, ns */
	BW_LINE_SET = 3, /* flags = level */
	BW_LINE_REQUEST = 4, /* a program has taken the line */
	BW_LINE_FREE = 5, /* and given it back; an output keeps its level */
	BW_LINE_OUTPUT = 6, /* the line has become an output; flags = level */
};

struct bw_event {
	__le32 kind;
	__le16 number; /* PWM channel or line */
	__le16 flags;
	__le64 nanos; /* CLOCK_MONOTONIC */
	__le64 a;
	__le64 b;
};

/* Guest to rig; events, then text follow. */
struct bw_report {
	__le32 magic;
	__le32 events;
	__le32 text;
	__le32 lost_events;
	__le64 nanos;
	__le32 outputs; /* level of every line, bit by bit */
	__le32 transfers; /* on the I2C bus, since the module was loaded */
};

struct bw_pulse {
	__le32 line;
	__le32 half_nanos; /* 0 = stopped */
};

/* Rig to guest; text follows. */
struct bw_orders {
	__le32 magic;
	__le32 text;
	__le32 faults;
	__le32 levels; /* of the inputs, bit by bit */
	__le32 micro_volts[BW_INPUTS];
	struct bw_pulse pulse[BW_PULSES];
	__le32 step_nanos; /* until the next exchange; 0 = the machine is to be switched off */
	__le32 reserved;
};

#define BW_MAGIC_REPORT 0x42775231
#define BW_MAGIC_ORDERS 0x42774f31

/* main.c */
extern struct device *bw_device;
u32 bw_faults(void);

/* events.c */
void bw_event(enum bw_event_kind kind, unsigned int number, unsigned int flags, u64 a, u64 b);
size_t bw_events_take(struct bw_event *to, size_t room, u32 *lost);

/* adc.c */
int bw_adc_add(void);
void bw_adc_remove(void);
void bw_adc_volts(unsigned int input, s32 micro_volts);
u32 bw_adc_transfers(void);

/* pwm.c */
int bw_pwm_add(unsigned int channels);
void bw_pwm_remove(void);

/* gpio.c */
int bw_gpio_add(void);
void bw_gpio_remove(void);
void bw_gpio_levels(u32 levels);
u32 bw_gpio_outputs(void);
void bw_gpio_pulse(unsigned int which, unsigned int line, u32 half_nanos);

/* console.c */
int bw_console_add(void);
void bw_console_remove(void);
size_t bw_console_take(char *to, size_t room);
void bw_console_type(const char *text, size_t length);

/* lockstep.c */
int bw_lockstep_add(void);
void bw_lockstep_remove(void);

#endif
