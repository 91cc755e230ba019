package orient

// TrueFromMagnetic turns a bearing read against magnetic north into one
// against true north: true = magnetic + declination, east positive.
func TrueFromMagnetic(magnetic Azimuth, declination Angle) Azimuth { return magnetic.Add(declination) }

// MagneticFromTrue is the bearing a needle shows for a true azimuth.
func MagneticFromTrue(z Azimuth, declination Angle) Azimuth { return z.Add(-declination) }
