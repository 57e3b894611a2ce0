package tallywell.bench;

import java.util.*;
import tallywell.trace.*;
import tallywell.trace.SimulatedTrace.*;

public final class CreepStudy {
    public static void main(String[] args) {
        int cells = Integer.parseInt(args[0]);
        int per = Integer.parseInt(args[1]);
        boolean curve = args[2].equals("curve");
        long seed = args.length > 3 ? Long.parseLong(args[3]) : 1;
        Fault fault = args.length > 4 ? Fault.valueOf(args[4]) : Fault.NONE;
        Lag onlyLag = args.length > 5 && !args[5].isBlank() && !args[5].equals("-") ? Lag.valueOf(args[5]) : null;
        boolean verbose = args.length > 6;
        Random r = new Random(seed);
        List<SimulatedTrace> list = new ArrayList<>();
        double[] ks = {.004, .008, .015, .03, .05}, kap = {.02, .1, .3, 1}, vs = {.001, .003, .01};
        double[] lags = {0, 0, 20, 60}, creeps = {-.001, 0, .001, .005}, s0 = {.0003, .001}, rho = {0, .5}, min = {8, 15, 30}, da = {.02, .1, .5, 2};
        double lo = Double.parseDouble(System.getProperty("lo", "0")), hi = Double.parseDouble(System.getProperty("hi", "1e99"));
        while (list.size() < cells) {
            boolean fo = r.nextInt(2) == 0;
            Lag lag = onlyLag != null ? onlyLag : new Lag[] {Lag.COUPLED, Lag.INDUCTION}[r.nextInt(2)];
            list.add(new SimulatedTrace(fo ? Kinetics.FIRST_ORDER : System.getProperty("pi") != null ? Kinetics.PRODUCT_INHIBITION : Kinetics.MICHAELIS_MENTEN, da[r.nextInt(4)], fo ? ks[r.nextInt(5)] : kap[r.nextInt(4)],
                vs[r.nextInt(3)], lag, lags[r.nextInt(4)], creeps[r.nextInt(4)], s0[r.nextInt(2)], rho[r.nextInt(2)], min[r.nextInt(3)], 15, 13, .15, fault));
            double bd = 1000 * list.get(list.size() - 1).bound();
            if (!(bd >= lo && bd < hi)) list.remove(list.size() - 1);
        }
        AfterRule rule = curve ? new AfterRule.ProgressCurve(OptionalDouble.empty()) : new AfterRule.Extrapolate(OptionalDouble.empty());
        long t0 = System.nanoTime();
        List<String> out = Collections.synchronizedList(new ArrayList<>());
        double[] tot = new double[20];
        list.parallelStream().forEach(c -> {
            double bound = 1000 * c.bound(), left = 1000 * c.burstLeftAtEnd();
            Source src = c.source();
            Random q = new Random(c.hashCode() + seed);
            int n = 0, inc = 0, cov = 0, over = 0, ovfl = 0, misfit = 0, bad = 0;
            double s = 0, ss = 0, su = 0;
            Map<TraceFlag, Integer> fl = new TreeMap<>();
            for (int i = 0; i < per; i++) {
                Drawn d = src.draw(q);
                Change ch = DeltaA.of(d.baseline(), d.after(), rule);
                for (TraceFlag f : ch.flags()) fl.merge(f, 1, Integer::sum);
                double e = 1000 * (ch.deltaA() - c.change()), u = 1000 * ch.uDeltaA().getAsDouble();
                boolean flag = ch.flags().contains(TraceFlag.REACTION_INCOMPLETE);
                double lf = ch.finished().isPresent() ? 1000 * c.burstLeft(d.after().timeS(ch.finished().get().from())) : 0;
                if (lf > .5) { over++; if (flag) ovfl++; }
                boolean any = ch.flags().contains(TraceFlag.JUMP) || ch.flags().contains(TraceFlag.CREEP_NOT_CONSTANT) || ch.flags().contains(TraceFlag.CURVE_MISFIT)|| ch.flags().contains(TraceFlag.BASELINE_DRIFTS);
                if (flag) inc++;
                if (!flag && !any && Math.abs(e) > 2 * u) bad++;
                if (!flag) { n++; s += e; ss += e * e; su += u * u; if (Math.abs(e) < 1.96 * u) cov++; }
            }
            double bias = s / n, rms = Math.sqrt(ss / n);
            boolean must = curve ? bound > 3 : false, mustNot = left < .1 && bound < 1.5;
            String v = "";
            if (curve && must && inc < .98 * per) v += " MISSED";
            if (!curve && over > 0.02 * per && ovfl < .98 * over) v += " MISSED" + ovfl * 100 / over;
            if (mustNot && inc > .03 * per) v += " FALSE";
            if (n > per / 20) {
                double mc = 2 * rms / Math.sqrt(n);
                if (Math.abs(bias) > (curve ? .3 : .5) + mc) v += " BIAS";
                double cv = 100.0 * cov / n, cmc = 200 * Math.sqrt(.05 * .95 / n);
                if (cv < 93 - cmc) v += " LOWCOV";
                if (cv > 97 + cmc && c.lagS() > 0 && c.creepPerMin() != 0) v += " HICOV";
                if (curve && rms > 1.2 * bound * (1 + 2 / Math.sqrt(2.0 * n))) v += " RMS";
            }
            if ((fault != Fault.NONE || onlyLag == Lag.TWO_STEPS || System.getProperty("pi") != null) && bad > .05 * per + 2 * Math.sqrt(.0475 * per)) v += " BAD";
            synchronized (tot) {
                tot[0]++; if (v.isEmpty()) tot[1]++;
                String[] names = {"MISSED", "FALSE", "BIAS", "LOWCOV", "HICOV", "RMS", "BAD"};
                for (int i = 0; i < 7; i++) if (v.contains(names[i])) tot[2 + i]++;
                if (must) tot[10]++; if (mustNot) tot[11]++; if (n > per / 20) tot[12]++;
            }
            if (!v.isEmpty() || verbose) out.add(String.format(Locale.ROOT, "%s D%.2f %s lag%s%.0f creep%.0f s%.1f r%.1f %dmin | bound %.2f left %.3f | inc %.3f n%d bias %.2f rms %.2f ratio %.2f u %.2f cov %.1f bad %.3f %s |%s", c.kinetics() == Kinetics.FIRST_ORDER ? "FO" : "MM", c.change(),
                c.kinetics() == Kinetics.FIRST_ORDER ? "k" + c.first() : "K" + c.first() + " V" + c.vmaxPerS(), c.lag().name().charAt(0), c.lagS(), c.creepPerMin() * 1000, c.noise() * 1000, c.carry(), (int) c.minutes(), bound, left, (double) inc / per, n, bias, rms, rms / bound, Math.sqrt(su / n), 100.0 * cov / n, (double) bad / per, fl, v));
        });
        Collections.sort(out);
        out.forEach(System.out::println);
        System.out.printf(Locale.ROOT, "cells %.0f ok %.0f | MISSED %.0f/%.0f FALSE %.0f/%.0f | judged %.0f BIAS %.0f LOWCOV %.0f HICOV %.0f RMS %.0f BAD %.0f%n", tot[0], tot[1], tot[2], tot[10], tot[3], tot[11], tot[12], tot[4], tot[5], tot[6], tot[7], tot[8]);
        System.out.printf("%.1f s, %.1f us a trace incl. drawing%n", (System.nanoTime() - t0) / 1e9, (System.nanoTime() - t0) / 1e3 * 2 / cells / per);
    }
}
