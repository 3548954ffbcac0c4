using System.Globalization;
using NodaTime;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Tests.Support;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Tests.Support;

/// <summary>An invented session: a sensor, markers and plates of swings whose movement is known.</summary>
internal sealed record RecordedSession
{
    /// <summary>Weight of the player, newtons.</summary>
    public const double WeightN = 700;

    private static readonly Lazy<Domain.Variables.VariableDictionary> Dictionary = new(Read);

    private const double MarkerRateHz = 240;
    private const double PlateRateHz = 500;
    private const double BeforeS = 1.6;

    public int Swings { get; init; } = 8;

    public InventedSwing Movement { get; init; } = new();

    /// <summary>The same session of a player who swings from the other side: everything that devices saw in a mirror along the target line, noise included.</summary>
    public bool IsMirrored { get; init; }

    /// <summary>Forces as a device gives them whose sign is not what the mapping says.</summary>
    public int ForceSign { get; init; } = 1;

    public bool HasMarkers { get; init; } = true;

    public bool HasPlates { get; init; } = true;

    public bool HasZero { get; init; } = true;

    /// <summary>Triggers of the plates in milliseconds late, swing by swing.</summary>
    public IReadOnlyList<double> TriggerLateMs { get; init; } = [2, -3, 1, 40, -2, 3, -1, 0];

    /// <summary>How the plates are recorded.</summary>
    public PlateLayout Plates { get; init; }

    /// <summary>Standing still before the first swing, recorded for two seconds.</summary>
    public bool HasQuiet { get; init; }

    /// <summary>Samples of each recording of plates; fewer than 800 end before impact.</summary>
    public int PlateSamples { get; init; } = 1100;

    /// <summary>Samples of the club head's marker lost before each impact, seconds from impact.</summary>
    public (double FromS, double ToS)? Lost { get; init; }

    public static SessionRecord Session { get; } = new()
    {
        Id = "P01-20260907-1",
        Participant = new ParticipantId("P01"),
        StartedAt = Some.Morning,
        StartedLocal = new LocalDateTime(2026, 9, 7, 10, 0),
        Phase = "baseline",
        Club = "iron",
    };

    public static StudySetup Setup { get; } = SetupAt(-0.8);

    private static readonly StudySetup Mirror = SetupAt(0.8);

    private static StudySetup SetupAt(double platesZ) => Some.Setup(new StudyFolder("/nowhere")) with
    {
        Dictionary = Dictionary.Value,
        Mappings =
        [
            Some.Mapping("strike"),
            Some.Mapping("plates") with
            {
                Rows = RowMeaning.Recordings,
                Plates = new Dictionary<string, PlateGeometry>
                {
                    ["lead"] = new() { CentreXM = 0.235, CentreZM = platesZ, DepthM = 0.04 },
                    ["trail"] = new() { CentreXM = -0.235, CentreZM = platesZ, DepthM = 0.04 },
                },
            },
            .. new[] { "lead", "trail", "both" }.Select(plate => Some.Mapping("plate-" + plate) with
            {
                Rows = RowMeaning.Recordings,
                Plates = new Dictionary<string, PlateGeometry> { [plate] = new() { CentreXM = PlateX(plate), CentreZM = platesZ, DepthM = 0.04 } },
            }),
            Some.Mapping("markers") with { Rows = RowMeaning.Recordings },
        ],
    };

    /// <summary>Summed vertical force in body weights: dips at −0.2 s, peaks at −0.04 s.</summary>
    public static double Vertical(double time) => Quintic.Chain(
        new Quintic(-0.8, -0.2, (1, 0, 0), (0.85, 0, 20)), new Quintic(-0.2, -0.04, (0.85, 0, 20), (1.5, 0, -60)), new Quintic(-0.04, 0.5, (1.5, 0, -60), (1, 0, 0)))(time);

    /// <summary>Share of it under the lead foot.</summary>
    public double LeadShare(double time) => Quintic.Chain(
        new Quintic(Movement.StartS, Movement.TopS, (0.5, 0, 0), (0.27, 0, 0)), new Quintic(Movement.TopS, 0.1, (0.27, 0, 0), (0.8, 0, 0)))(time);

    /// <summary>Rows of all output tables of measuring, by table.</summary>
    public IReadOnlyDictionary<string, RowSet> Measured() => Body.RunAll("measure", Rows(), Session, setup: IsMirrored ? Mirror : Setup);

    /// <summary>Rows of one output table of measuring.</summary>
    public RowSet Measure(string table) => Measured()[table];

    /// <summary>Rows of all inputs.</summary>
    public IReadOnlyList<RowSet> Rows()
    {
        var captures = new RowSetBuilder(StudyTables.Captures(Setup.Dictionary));
        var links = new RowSetBuilder(StudyTables.Links);
        var curves = new RowSetBuilder(StudyTables.Curves);
        var events = new RowSetBuilder(StudyTables.CaptureEvents);
        for (var i = 0; i < Swings; i++)
        {
            var swing = string.Create(CultureInfo.InvariantCulture, $"P01-20260907-1-{i + 1:00}");
            var struck = Some.Morning + Duration.FromSeconds(30 * (i + 1));
            Capture("strike", swing, struck, null, struck, ("club_head_speed", (object?)(40.0 + (0.1 * i))));
            if (HasMarkers)
            {
                // The marker system's clock is five seconds ahead; it hears contact itself.
                var id = Capture("markers", swing, struck, "swing", struck + Duration.FromSeconds(5 - BeforeS));
                AddMarkers(curves, id, i);
                events.Add(("capture_id", id), ("participant", "P01"), ("event", "impact"), ("time_s", BeforeS));
            }

            if (HasPlates)
            {
                var late = TriggerLateMs[i % TriggerLateMs.Count] / 1000;
                foreach (var recorder in PlateRecorder.Of(Plates))
                {
                    var before = BeforeS - recorder.LaterS;
                    var id = Capture(recorder.Source, swing, struck, "swing", struck + Duration.FromSeconds(recorder.ClockAheadS - before));
                    AddPlates(curves, id, recorder, t => t < -3 ? 0 : 1, -before, -before - (recorder.IsTriggerExact ? 0 : late), (int)(PlateSamples * recorder.RateHz / PlateRateHz));
                }
            }
        }

        foreach (var recorder in PlateRecorder.Of(Plates).Where(_ => HasPlates))
        {
            var before = Some.Morning + Duration.FromSeconds(recorder.ClockAheadS);
            if (HasZero)
                AddPlates(curves, Capture(recorder.Source, null, before, "zero", before), recorder, _ => 0, -0.2, double.NaN, 100);
            if (HasQuiet)
            {
                var began = before + Duration.FromSeconds(5 + recorder.LaterS);
                AddPlates(curves, Capture(recorder.Source, null, began, "quiet", began), recorder, _ => 1, -20 + recorder.LaterS, double.NaN, (int)(2 * recorder.RateHz));
            }
        }

        return [captures.Build(), links.Build(), curves.Build(), events.Build()];

        string Capture(string source, string? swing, Instant struck, string? purpose, Instant first, params (string, object?)[] values)
        {
            var id = $"{source}-{swing ?? purpose}";
            captures.Add([
                ("capture_id", id), ("source", source), ("device", source), ("participant", "P01"), ("recorded_at", first), ("struck_at", struck),
                ("purpose", purpose), ("original_sha256", id), ("original_row", 1L), .. values]);
            links.Add(("capture_id", id), ("swing_id", swing), ("participant", "P01"), ("session", Session.Id), ("struck_at", struck),
                ("method", swing is null ? purpose : source == "strike" ? "session" : "time"));
            return id;
        }
    }

    private static Domain.Variables.VariableDictionary Read() =>
        DictionaryReader.Read(Path.Combine(Repository.Root, "data-dictionary")).Succeeded(out var dictionary, out var problems)
            ? dictionary
            : throw new InvalidOperationException(string.Join('\n', problems));

    private void AddMarkers(RowSetBuilder curves, string id, int seed)
    {
        var m = Movement;
        (string Name, Func<double, Vector3D> Place)[] marks =
        [
            ("club_head", m.Head), ("grip", m.Grip), ("lead_wrist", m.Wrist), ("lead_elbow", m.Elbow), ("lead_shoulder", m.LeadShoulderOfTrunk), ("trail_shoulder", m.TrailShoulder),
            ("pelvis_front_lead", t => m.Pelvis(t, 0.1, 0.12)), ("pelvis_front_trail", t => m.Pelvis(t, 0.1, -0.12)), ("pelvis_back", t => m.Pelvis(t, -0.1, 0)),
            ("trail_hip", t => m.Leg(t).Hip), ("trail_knee", t => m.Leg(t).Knee), ("trail_ankle", t => m.Leg(t).Ankle),
        ];
        foreach (var (name, place) in marks)
        {
            // Each mark of each swing has noise of its own.
            var seen = InventedSwing.Seen(place, MarkerRateHz, 0.0003, (100 * seed) + Array.FindIndex(marks, mark => mark.Name == name) + 1, -BeforeS, 1);
            if (IsMirrored)
                seen = seen.Mirrored();
            if (name == "club_head" && Lost is { } lost)
                seen = seen.Map(values => [.. values.Select((x, i) => seen.Axis.TimeOf(i) >= lost.FromS && seen.Axis.TimeOf(i) <= lost.ToS ? double.NaN : x)]);
            foreach (var (axis, values) in new[] { ("x", seen.X), ("y", seen.Y), ("z", seen.Z) })
                curves.Add(("capture_id", id), ("participant", "P01"), ("channel", $"{name}_{axis}"), ("unit", "m"), ("sample_rate_hz", MarkerRateHz), ("values", values));
        }
    }

    /// <summary>Both feet press at known places; each plate has a zero of its own.</summary>
    private void AddPlates(RowSetBuilder curves, string id, PlateRecorder recorder, Func<double, double> isOn, double fromS, double firstTimeS, int samples)
    {
        foreach (var plate in recorder.Plates)
        {
            var zero = plate == "lead" ? 4.0 : -3.0;
            var channels = new[] { "force_x", "force_y", "force_z", "moment_x", "moment_y", "moment_z" }.ToDictionary(name => name, _ => new double[samples]);
            for (var i = 0; i < samples; i++)
            {
                var time = fromS + (i / recorder.RateHz);
                Vector3D force = default, moment = default;
                foreach (var foot in plate == "both" ? ["lead", "trail"] : new[] { plate })
                {
                    var share = foot == "lead" ? LeadShare(time) : 1 - LeadShare(time);
                    var own = isOn(time) * WeightN * Vertical(time) * share * new Vector3D(foot == "lead" ? -0.1 : 0.15, 1, 0.05);
                    force += own;
                    moment += new Vector3D(0.01 + PlateX(foot) - PlateX(plate), 0.04, 0.02).Cross(own) + (isOn(time) * 10 * Vertical(time) * Vector3D.Up);
                }

                // A mirror along the target line turns z of forces over, and of moments x and y.
                var hand = IsMirrored ? -1 : 1;
                double[] read = [force.X, force.Y, hand * force.Z, hand * moment.X, hand * moment.Y, moment.Z];
                foreach (var (channel, value) in channels.Values.Zip(read))
                    channel[i] = zero + (ForceSign * value);
            }

            foreach (var (name, values) in channels)
            {
                curves.Add(("capture_id", id), ("participant", "P01"), ("channel", $"{plate}_{name}"), ("unit", name[0] == 'f' ? "N" : "N.m"),
                    ("sample_rate_hz", recorder.RateHz), ("t0_s", double.IsNaN(firstTimeS) ? null : firstTimeS), ("values", values));
            }
        }
    }

    private static double PlateX(string plate) => plate switch { "lead" => 0.235, "trail" => -0.235, _ => 0 };
}
