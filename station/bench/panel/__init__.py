"""Three lamps, a buzzer and one button."""
