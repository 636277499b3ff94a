// SPDX-License-Identifier: GPL-2.0
/* A PWM chip that writes down every state it is told, and refuses a period when it is to. */
#include <linux/module.h>
#include <linux/pwm.h>
#include "bwbench.h"

static int apply(struct pwm_chip *chip, struct pwm_device *pwm, const struct pwm_state *to)
{
	unsigned int flags = (to->enabled ? 1 : 0) | (to->polarity == PWM_POLARITY_INVERSED ? 2 : 0);

	if (bw_faults() & BW_FAULT_PERIOD && to->period != pwm->state.period) {
		bw_event(BW_PWM_REFUSED, pwm->hwpwm, flags, to->period, to->duty_cycle);
		return -EINVAL;
	}
	bw_event(BW_PWM_APPLY, pwm->hwpwm, flags, to->period, to->duty_cycle);
	return 0;
}

static const struct pwm_ops operations = {
	.apply = apply,
	.owner = THIS_MODULE,
};

static struct pwm_chip chip = {
	.ops = &operations,
};

int bw_pwm_add(unsigned int channels)
{
	chip.dev = bw_device;
	chip.npwm = channels;
	return pwmchip_add(&chip);
}

void bw_pwm_remove(void)
{
	pwmchip_remove(&chip);
}
