// SPDX-License-Identifier: GPL-2.0
/* Puts the bench's devices into the kernel. */
#include <linux/module.h>
#include <linux/platform_device.h>
#include "bwbench.h"

static struct platform_device *platform;
struct device *bw_device;

#define PWM_CHANNELS 2

static bool pwm = true;

/* Written while nobody uses the chip: it comes and goes as with the overlay. */
static int set_pwm(const char *text, const struct kernel_param *parameter)
{
	bool before = pwm;
	int failed = param_set_bool(text, parameter);

	if (failed || pwm == before || !bw_device)
		return failed;
	if (pwm)
		return bw_pwm_add(PWM_CHANNELS);
	bw_pwm_remove();
	return 0;
}

static const struct kernel_param_ops pwm_operations = {
	.set = set_pwm,
	.get = param_get_bool,
};
module_param_cb(pwm, &pwm_operations, &pwm, 0644);
MODULE_PARM_DESC(pwm, "there is a PWM chip; N = none, as without the overlay");

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
	failed = bw_pwm_add(PWM_CHANNELS);
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
	if (pwm)
		bw_pwm_remove();
	bw_adc_remove();
	platform_device_unregister(platform);
}

module_init(bench_init);
module_exit(bench_exit);
MODULE_DESCRIPTION("Kernel bench: converter, PWM chip and GPIO bank with a rig at the other end");
MODULE_LICENSE("GPL");
