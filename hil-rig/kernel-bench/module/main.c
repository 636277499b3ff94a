// SPDX-License-Identifier: GPL-2.0
/* Puts the bench's devices into the kernel. */
#include <linux/module.h>
#include <linux/platform_device.h>
#include "bwbench.h"

static unsigned int pwm_channels = 2;
module_param(pwm_channels, uint, 0444);
MODULE_PARM_DESC(pwm_channels, "channels of the PWM chip; 0 = no chip, as without the overlay");

static struct platform_device *platform;
struct device *bw_device;

static int __init bench_init(void)
{
	int failed;

	platform = platform_device_register_simple("bwbench", -1, NULL, 0);
	if (IS_ERR(platform))
		return PTR_ERR(platform);
	bw_device = &platform->dev;
	failed = bw_adc_add();
	if (failed)
		goto no_adc;
	failed = bw_pwm_add(pwm_channels);
	if (failed)
		goto no_pwm;
	failed = bw_gpio_add();
	if (failed)
		goto no_gpio;
	failed = bw_console_add();
	if (failed)
		goto no_console;
	failed = bw_lockstep_add();
	if (failed)
		goto no_rig;
	return 0;

no_rig:
	bw_console_remove();
no_console:
	bw_gpio_remove();
no_gpio:
	bw_pwm_remove();
no_pwm:
	bw_adc_remove();
no_adc:
	platform_device_unregister(platform);
	return failed;
}

static void __exit bench_exit(void)
{
	bw_lockstep_remove();
	bw_console_remove();
	bw_gpio_remove();
	bw_pwm_remove();
	bw_adc_remove();
	platform_device_unregister(platform);
}

module_init(bench_init);
module_exit(bench_exit);
MODULE_DESCRIPTION("Kernel bench: converter, PWM chip and GPIO bank with a rig at the other end");
MODULE_LICENSE("GPL");
