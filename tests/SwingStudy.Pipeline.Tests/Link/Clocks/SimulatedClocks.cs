using SwingStudy.Pipeline.Link.Clocks;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.Pipeline.Tests.Link.Clocks;

/// <summary>Invented swings as two devices with clocks of their own record them, with the truth beside.</summary>
internal sealed class SimulatedClocks
{
    private readonly Xoshiro256 _chance;
    private readonly NormalStream _normal;

    public SimulatedClocks(ulong seed)
    {
        _chance = new Xoshiro256(seed);
        _normal = new NormalStream(_chance.Split("normal"));
    }

    public int Swings { get; init; } = 30;

    /// <summary>Seconds between swings, at least and at most.</summary>
    public (double Least, double Most) Spacing { get; init; } = (18, 68);

    /// <summary>To what the reference cuts its times; 0: not at all.</summary>
    public double Cut { get; init; }

    /// <summary>Share of swings that either device misses, and number of false triggers of either per swing.</summary>
    public double Faults { get; init; } = 0.1;

    /// <summary>Share of triggers that come 0.1 to 0.5 s late.</summary>
    public double Late { get; init; } = 0.03;

    /// <summary>After this share of the swings the device's clock is set anew; null: never.</summary>
    public double? Restart { get; init; }

    /// <summary>Players who take turns at random; the reference names them, the device does not.</summary>
    public bool TakesTurns { get; init; }

    public List<(ClockReading Reading, int Id)> Reference { get; } = [];

    public List<(ClockReading Reading, int Id)> Device { get; } = [];

    /// <summary>Offset at true time 0 and drift of the device's clock before and after the restart.</summary>
    public (double Offset, double Drift)[] Clocks { get; private set; } = [];

    public double JitterSeconds { get; private set; }

    public ClockReading[] ReferenceReadings => [.. Reference.Select(record => record.Reading)];

    public ClockReading[] DeviceReadings => [.. Device.Select(record => record.Reading)];

    /// <summary>Swings that both recorded.</summary>
    public int Common => Device.Select(record => record.Id).Where(id => id >= 0).Intersect(Reference.Select(record => record.Id)).Count();

    public SimulatedClocks Play()
    {
        JitterSeconds = 0.001 + (0.009 * _chance.NextUnit());
        Clocks = [NewClock(_chance.NextIndex(3) == 0 ? 7200 : 20), NewClock(400)];
        Clocks[1].Offset += Clocks[0].Offset;
        var restart = Restart is { } share ? (int)(Swings * share) : Swings;
        var times = new double[Swings];
        var now = 0.0;
        for (var i = 0; i < Swings; i++)
            times[i] = now += Spacing.Least + (_chance.NextUnit() * (Spacing.Most - Spacing.Least));
        for (var i = 0; i < Swings; i++)
        {
            var who = TakesTurns ? _chance.NextIndex(2) : ClockReading.Anybody;
            if (_chance.NextUnit() >= Faults)
                Reference.Add((Told(times[i] + (0.0005 * _normal.Next()), who), i));
            var late = _chance.NextUnit() < Late ? 0.1 + (0.4 * _chance.NextUnit()) : 0;
            if (_chance.NextUnit() >= Faults)
                Device.Add((new ClockReading(OnDevice(times[i] + late + (JitterSeconds * _normal.Next()), i >= restart)), i));
        }

        // What lies within 1.5 s of a swing, or of another device's false trigger, could not be told from a late trigger by anybody.
        var taken = times.ToList();
        for (var i = 0; i < (int)(Swings * Faults); i++)
        {
            var ofDevice = Elsewhere(taken, now);
            Device.Add((new ClockReading(OnDevice(ofDevice, times.Count(time => time < ofDevice) >= restart)), -1 - i));
            Reference.Add((Told(Elsewhere(taken, now), ClockReading.Anybody), -1_000_000 - i));
        }

        Reference.Sort((one, other) => one.Reading.Middle.CompareTo(other.Reading.Middle));
        Device.Sort((one, other) => one.Reading.Middle.CompareTo(other.Reading.Middle));
        return this;
    }

    private (double Offset, double Drift) NewClock(double range) => (range * (_chance.NextUnit() - 0.5), 400e-6 * (_chance.NextUnit() - 0.5));

    private ClockReading Told(double time, int who) => Cut > 0 ? new ClockReading(Math.Floor(time / Cut) * Cut, Cut, who) : new ClockReading(time, 0, who);

    private double OnDevice(double time, bool isAfterRestart) => time + Clocks[isAfterRestart ? 1 : 0].Offset + (Clocks[isAfterRestart ? 1 : 0].Drift * time);

    private double Elsewhere(List<double> taken, double end)
    {
        while (true)
        {
            var time = _chance.NextUnit() * end;
            if (taken.TrueForAll(other => Math.Abs(other - time) >= 1.5))
            {
                taken.Add(time);
                return time;
            }
        }
    }
}
