using System.Globalization;
using System.Text;
using NodaTime;
using SwingStudy.Motion.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Laboratories;

/// <summary>Marks in text, under two heading rows, with sides by the body and no mark of contact, from files to measures by the mapping alone.</summary>
public sealed class MarkerTextTests
{
    private const int Swings = 2;
    private const double RateHz = 240;
    private const double BeforeS = 1.6;

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void LeftAndRightMarksUnderTwoHeadingRowsGiveWhatThePlayerDid(int side)
    {
        var movement = new InventedSwing { Side = side };
        using var study = new LaboratoryStudy(side, [Mapping(side)], Enumerable.Range(0, Swings).Select(i => ($"capture/take_{i + 1:00}.csv", File(movement, i))));
        MarkerTruth.Holds(study, movement, RateHz, Swings);
    }

    /// <summary>The name by the side of the body: the left side of a right-handed player leads.</summary>
    private static string BySide(string landmark, int side) => string.Join('_', landmark.Split('_').Select(word => word switch
    {
        "lead" => side > 0 ? "left" : "right",
        "trail" => side > 0 ? "right" : "left",
        _ => word,
    }));

    private static string Label(string landmark, int side) => string.Concat(BySide(landmark, side).Split('_').Select(word => char.ToUpperInvariant(word[0]) + word[1..3]));

    private static string Mapping(int side) => $$"""
        source: capture
        title: Invented cameras
        device: capture
        rows: recordings
        reader: delimited
        files: 'take_(?<number>\d+)\.csv'
        text: { encoding: utf-8, delimiter: ',', decimal: '.' }
        layout: { preamble: 3, headings: 2, units_row: false }
        participant: { preamble: '^Subject,(?<value>.+)$' }
        sequence: { file: number }
        time: { parts: [{ preamble: '^Began,(?<value>.+)$' }], format: 'yyyy-MM-dd HH:mm:ss.f', zone: {{LaboratoryStudy.Zone}} }
        ignore: [Frame]
        recording:
          form: single
          clock: { column: Time, unit: s }
          handedness: { preamble: '^Swings,(?<value>.+)$' }
          axes: { x: -y, y: z, z: -x }
          landmark_unit: mm
        landmarks:
        {{string.Join('\n', Marks.Names.Select(landmark => $"  {BySide(landmark, side)}: {Label(landmark, side)}"))}}
        """;

    /// <summary>Millimetres along x to the left, y away from the target, z up; now and then, but not around contact, a mark is not seen.</summary>
    private static byte[] File(InventedSwing movement, int swing)
    {
        var text = new StringBuilder();
        var noise = new Noise(swing + 1);
        text.Append(CultureInfo.InvariantCulture, $"Subject,{LaboratoryStudy.Player}\nBegan,{LaboratoryStudy.Local(LaboratoryStudy.Struck(swing) - Duration.FromSeconds(BeforeS))}\nSwings,{(movement.Side > 0 ? "right" : "left")}\n");
        text.Append(",,").AppendJoin(',', Marks.Names.Select(landmark => Label(landmark, movement.Side) + ",,")).Append("\nFrame,Time,").AppendJoin(',', Marks.Names.Select(_ => "X,Y,Z")).Append('\n');
        for (var i = 0; i < 2.5 * RateHz; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{i + 1},{i / RateHz:0.00000}");
            for (var mark = 0; mark < Marks.Names.Count; mark++)
            {
                var place = Marks.Place(movement, Marks.Names[mark], (i / RateHz) - BeforeS);
                if ((i + (7 * mark) + 40) % 97 < 3)
                    text.Append(",,,");
                else
                    text.Append(CultureInfo.InvariantCulture, $",{-1000 * place.Z + Off():0.000},{-1000 * place.X + Off():0.000},{1000 * place.Y + Off():0.000}");
            }

            text.Append('\n');
        }

        return Encoding.UTF8.GetBytes(text.ToString());

        double Off() => 0.3 * noise.Next();
    }
}
